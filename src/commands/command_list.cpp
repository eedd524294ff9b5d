#include "commands/command_list.hpp"

#include <fmt/format.h>

#include "commands/check_many.hpp"
#include "commands/command_options.hpp"
#include "commands/leak_test_line.hpp"
#include "commands/walk_round.hpp"
#include "render/version.hpp"
#include "system/path_text.hpp"

namespace linewright {

namespace {

std::optional<std::filesystem::path> path_if(const std::optional<std::string>& word) {
  if (!word) return std::nullopt;
  return path_of(*word);
}

CheckOptions check_options(const Words& words, const ResultForm& form) {
  return {path_of(words.project), words.only_rule, words.only_route, words.strict, form, words.set};
}

Outcome run_check(const Words& words, const ResultForm& form) {
  CheckOptions options = check_options(words, form);
  options.project = path_of(words.projects.front());
  const bool as_lines = words.format == "jsonl";
  if (words.projects.size() == 1 && !as_lines) return check(options);
  std::vector<std::filesystem::path> projects;
  for (const std::string& project : words.projects) projects.push_back(path_of(project));
  return check_many(options, projects, as_lines);
}

Outcome keep_watching(const Words& words, const ResultForm& form, const Show& show) {
  return watch({check_options(words, form), path_if(words.report), words.force, words.serve}, show);
}

Outcome run_catalogue(const Words& words, const ResultForm& form) {
  return catalogue({words.name, path_if(words.catalogue_project), form});
}

void declare_form(CLI::App& app, Words& words, const Command& command) {
  if (command.has_format)
    app.add_option("--format", words.format, "form of the result")
        ->type_name(fmt::format("{}", fmt::join(command.formats, "|")));
  if (command.run) {
    app.add_option("--output", words.output, "write the result to this new file")
        ->type_name("FILE");
    app.add_flag("--force", words.force, "let --output replace a file");
  }
  app.add_option("--color", words.color, "colour verdicts")->type_name("auto|always|never");
  app.add_option("--units", words.units, "lengths in text and CSV")->type_name("in|fraction|mm");
  app.add_flag("--quiet", words.quiet, "results and errors only, no notes");
}

}  // namespace

const std::vector<Command>& all_commands() {
  static const std::vector<Command> commands = {
      {"check",
       "judge every route by every rule",
       "linewright check . --strict",
       {"text", "json", "jsonl", "sarif"},
       declare_check,
       run_check},
      {"watch",
       "check again on every save, and print what changed",
       "linewright watch .",
       {"text", "json"},
       declare_watch,
       nullptr,
       keep_watching,
       "Watches the project file, what it includes, and meshes. Ends on Ctrl-C (SIGINT)\n"
       "or SIGTERM, with the exit code of the last check. JSON is one line for a check.\n"},
      {"report",
       "all of it as one page, with a picture to turn",
       "linewright report . --output report.html",
       {"html"},
       declare_report,
       [](const Words& words, const ResultForm& form) {
         return report(check_options(words, form));
       }},
      {"draw",
       "a view to print: side, plan, a frame, or a line unrolled",
       "linewright draw . --view front --frame F4 --output frame-4.svg",
       {"svg"},
       declare_draw,
       [](const Words& words, const ResultForm& form) {
         return draw(check_options(words, form), words.draw);
       }},
      {"export",
       "a model in space (glTF), or a frame to cut by machine (DXF)",
       "linewright export . --to gltf --output aeroplane.glb",
       {"gltf", "dxf"},
       declare_export,
       [](const Words& words, const ResultForm& form) {
         return export_project(check_options(words, form), words.exported);
       },
       nullptr,
       "",
       false},
      {"compare",
       "two projects, or one and a change to it, side by side",
       "linewright compare . --set routes.static-left.line=tube-aluminium-1/4",
       {"text", "json"},
       declare_compare,
       [](const Words& words, const ResultForm& form) {
         return compare({path_of(words.project), path_if(words.second_project), words.set, form});
       }},
      {"expand",
       "the project as one file, with all that was worked out",
       "linewright expand . --output whole.yaml",
       {"text"},
       declare_project,
       [](const Words& words, const ResultForm&) { return expand(path_of(words.project)); }},
      {"cutlist",
       "lengths, bend schedules, volumes and masses",
       "linewright cutlist . --format csv --output cuts.csv",
       {"text", "json", "csv", "svg"},
       declare_cutlist,
       [](const Words& words, const ResultForm& form) {
         return cutlist(path_of(words.project), form);
       }},
      {"schedule",
       "where supports and holes go, and what is drilled for them",
       "linewright schedule . --by part",
       {"text", "json", "csv"},
       declare_schedule,
       [](const Words& words, const ResultForm& form) {
         return schedule(path_of(words.project), words.schedule_by, form);
       }},
      {"parts",
       "what to buy",
       "linewright parts . --spares 10%",
       {"text", "json", "csv"},
       declare_parts,
       [](const Words& words, const ResultForm& form) {
         return parts(path_of(words.project), words.parts, form);
       }},
      {"suggest",
       "where the fewest supports of a line go",
       "linewright suggest . --route static-left",
       {"text", "json"},
       declare_suggest,
       [](const Words& words, const ResultForm& form) {
         return suggest({path_of(words.project), words.only_route, words.write, form});
       },
       nullptr,
       "It edits no file: it prints `points` to paste in place of the route's own.\n"},
      {"leak-test",
       "plan a leak test of static or pitot lines, or judge its readings",
       "linewright leak-test plan . --system static --field-elevation 800 \\\n"
       "  --altimeter-setting 29.95 --temperature 64",
       {"text", "json", "svg"},
       declare_leak_test,
       run_leak_test},
      {"rig",
       "tension, stretch, friction and spans of the control cables",
       "linewright rig . --route rudder-left",
       {"text", "json", "csv", "svg"},
       declare_rig,
       [](const Words& words, const ResultForm& form) {
         return rig(path_of(words.project), words.only_route, form);
       }},
      {"close-up",
       "what must be in, done and tested before each closure goes on",
       "linewright close-up . --output close-up.txt",
       {"text", "json"},
       declare_project,
       [](const Words& words, const ResultForm& form) {
         return close_up(path_of(words.project), form);
       }},
      {"walk-round",
       "sheets for looking at the aeroplane: what to see and measure",
       "linewright walk-round . --output sheets.txt",
       {"text", "csv"},
       declare_walk_round,
       [](const Words& words, const ResultForm& form) {
         return walk_round(path_of(words.project), words.only_route, form);
       }},
      {"rules",
       "list the rules",
       "linewright rules",
       {"text", "json"},
       [](CLI::App&, Words&) {},
       [](const Words&, const ResultForm& form) { return list_rules(form); }},
      {"explain",
       "a rule, a key or a value, a catalogue entry or a trade word",
       "linewright explain chafe",
       {"text", "json"},
       declare_explain,
       [](const Words& words, const ResultForm& form) { return explain(words.rule, form); }},
      {"catalogue",
       "tubes, hoses, cables, wires, clamps and fittings, with sources",
       "linewright catalogue tube-aluminium-1/4",
       {"text", "json"},
       declare_catalogue,
       run_catalogue},
      {"schema",
       "the JSON Schema of project files, for editors",
       "linewright schema --output linewright.schema.json",
       {"json"},
       declare_schema,
       [](const Words& words, const ResultForm&) { return schema(words.schema_of); }},
      {"init",
       "write a small project that checks clean",
       "linewright init my-aeroplane",
       {},
       declare_init,
       [](const Words& words, const ResultForm&) {
         return init(path_of(words.directory), words.quiet);
       }},
  };
  return commands;
}

void declare_all(CLI::App& app, Words& words) {
  app.name("linewright");
  app.set_help_flag("-h,--help", "show this and stop");
  app.set_version_flag("--version",
                       "linewright " + std::string(version()) + "\n" + std::string(build_words()),
                       "show the version and stop");
  app.require_subcommand(1);
  constexpr std::size_t widest_command = 13;
  app.get_formatter()->column_width(widest_command + 2);
  app.footer(
      "linewright COMMAND --help tells more of each.\n"
      "Exit codes: 0 nothing failed, 1 a fail or an unknown, 2 bad input or usage,\n"
      "3 internal error.\n"
      "Example: linewright init my-aeroplane && linewright check my-aeroplane");
  for (const Command& command : all_commands()) {
    CLI::App* sub = app.add_subcommand(std::string(command.name), std::string(command.purpose));
    sub->formatter(std::make_shared<CLI::Formatter>());
    sub->footer(std::string(command.note) + "Example: " + std::string(command.example));
    command.declare(*sub, words);
    if (!command.formats.empty()) declare_form(*sub, words, command);
  }
}

}  // namespace linewright
