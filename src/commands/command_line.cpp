#include "commands/command_line.hpp"

#include <unistd.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <iostream>
#include <optional>
#include <sstream>
#include <stdexcept>
#include <string_view>

#include "commands/known_name.hpp"
#include "commands/leak_test_line.hpp"
#include "commands/still_working.hpp"
#include "commands/walk_round.hpp"
#include "commands/watch/watch.hpp"
#include "commands/whole_file.hpp"
#include "commands/words.hpp"
#include "render/layout.hpp"
#include "render/version.hpp"

namespace linewright {

namespace {

/// One command of the command line: how its words are declared and what it does.
struct Command {
  std::string_view name;
  std::string_view purpose;
  std::string_view example;
  std::vector<std::string> formats;  ///< empty: the command prints no result in forms
  void (*declare)(CLI::App&, Words&);
  Outcome (*run)(const Words&, const ResultForm&);
  /// Instead of `run` for a command that shows results until it is stopped. It has no --output.
  Outcome (*keep_running)(const Words&, const ResultForm&, const Show&) = nullptr;
  std::string_view note = {};  ///< whole lines under the command's help
  bool has_format = true;      ///< false where an option of its own says the form
};

void declare_project(CLI::App& app, Words& words) {
  app.add_option("PROJECT", words.project, "project file, or folder with project.yaml")
      ->required()
      ->type_name("");
}

void declare_set(CLI::App& app, Words& words) {
  app.add_option("--set", words.set, "judge as if the files said so; repeatable")
      ->type_name("PATH=VALUE")
      ->expected(1)
      ->allow_extra_args(false)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
}

void declare_compare(CLI::App& app, Words& words) {
  app.add_option("A", words.project, "project file, or folder with project.yaml")
      ->required()
      ->type_name("");
  app.add_option("B", words.second_project, "another; or A as --set would have it")->type_name("");
  declare_set(app, words);
  app.add_flag("--verbose", words.verbose, "show what changed among what passes, too");
}

void declare_check(CLI::App& app, Words& words) {
  declare_project(app, words);
  app.add_option("--rule", words.only_rule, "judge by this rule only")->type_name("RULE");
  app.add_option("--route", words.only_route, "judge this route only")->type_name("NAME");
  app.add_option("--by", words.by, "order of the findings")->type_name("gravity|route");
  app.add_flag("--strict", words.strict, "a warning counts as a fail");
  declare_set(app, words);
  app.add_flag("--verbose", words.verbose, "show what passed and was passed over, too");
}

void declare_watch(CLI::App& app, Words& words) {
  declare_check(app, words);
  app.add_option("--report", words.report, "also write a report to this new file each time")
      ->type_name("FILE");
  app.add_flag("--force", words.force, "let --report replace a file");
  app.add_flag("--serve", words.serve, "show the report at 127.0.0.1, to this computer");
}

void declare_report(CLI::App& app, Words& words) {
  declare_project(app, words);
  app.add_flag("--strict", words.strict, "a warning counts as a fail");
  declare_set(app, words);
}

void declare_draw(CLI::App& app, Words& words) {
  declare_project(app, words);
  app.add_option("--view", words.draw.view, "what to draw")->type_name("side|plan|front|strip");
  app.add_option("--station", words.draw.station, "front: where to cut")->type_name("LENGTH");
  app.add_option("--frame", words.draw.frame, "front: at this frame")->type_name("NAME");
  app.add_option("--route", words.draw.route, "strip: this line")->type_name("NAME");
  app.add_flag("--true-scale", words.draw.true_scale, "a frame or a strip 1:1, on pages");
  app.add_option("--paper", words.draw.paper, "of the pages; letter, with --units mm a4")
      ->type_name("letter|a4");
}

void declare_export(CLI::App& app, Words& words) {
  declare_project(app, words);
  app.add_option("--to", words.exported.to, "a model in space, or a frame to cut by machine")
      ->type_name("gltf|dxf");
  app.add_option("--frame", words.exported.frame, "dxf: this frame")->type_name("NAME");
}

void declare_rig(CLI::App& app, Words& words) {
  declare_project(app, words);
  app.add_option("--route", words.only_route, "this cable only")->type_name("NAME");
}

void declare_schedule(CLI::App& app, Words& words) {
  declare_project(app, words);
  app.add_option("--by", words.schedule_by, "in which order")->type_name("part|route|frame");
}

void declare_parts(CLI::App& app, Words& words) {
  declare_project(app, words);
  app.add_option("--spares", words.parts.spares, "spares, as a share of each quantity")
      ->type_name("PERCENT");
  app.add_option("--by", words.parts.by, "a row for each closure that comes over it")
      ->type_name("closure");
}

void declare_walk_round(CLI::App& app, Words& words) {
  declare_project(app, words);
  app.add_option("--route", words.only_route, "this route only")->type_name("NAME");
}

void declare_explain(CLI::App& app, Words& words) {
  app.add_option("WORD", words.rule, "a rule, a key of project files, or 'keys' for all")
      ->required()
      ->type_name("");
}

void declare_catalogue(CLI::App& app, Words& words) {
  app.add_option("NAME", words.name, "only this entry, with full sources")->type_name("");
  app.add_option("--project", words.catalogue_project, "with this project's own lines")
      ->type_name("PROJECT");
}

void declare_init(CLI::App& app, Words& words) {
  app.add_option("DIR", words.directory, "folder, made if it is not there")
      ->required()
      ->type_name("");
  app.add_flag("--quiet", words.quiet, "print nothing but errors");
}

CheckOptions check_options(const Words& words, const ResultForm& form) {
  return {words.project, words.only_rule, words.only_route, words.strict, form, words.set};
}

Outcome run_check(const Words& words, const ResultForm& form) {
  return check(check_options(words, form));
}

Outcome keep_watching(const Words& words, const ResultForm& form, const Show& show) {
  return watch({check_options(words, form), words.report, words.force, words.serve}, show);
}

Outcome run_catalogue(const Words& words, const ResultForm& form) {
  return catalogue({words.name, words.catalogue_project, form});
}

const std::vector<Command>& all_commands() {
  static const std::vector<Command> commands = {
      {"check",
       "judge every route by every rule",
       "linewright check . --strict",
       {"text", "json", "sarif"},
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
         return compare({words.project, words.second_project, words.set, form});
       }},
      {"expand",
       "the project as one file, with all that was worked out",
       "linewright expand . --output whole.yaml",
       {"text"},
       declare_project,
       [](const Words& words, const ResultForm&) { return expand(words.project); }},
      {"cutlist",
       "lengths, bend schedules, volumes and masses",
       "linewright cutlist . --format csv --output cuts.csv",
       {"text", "json", "csv", "svg"},
       declare_project,
       [](const Words& words, const ResultForm& form) { return cutlist(words.project, form); }},
      {"schedule",
       "where supports and holes go, and what is drilled for them",
       "linewright schedule . --by part",
       {"text", "json", "csv"},
       declare_schedule,
       [](const Words& words, const ResultForm& form) {
         return schedule(words.project, words.schedule_by, form);
       }},
      {"parts",
       "what to buy",
       "linewright parts . --spares 10%",
       {"text", "json", "csv"},
       declare_parts,
       [](const Words& words, const ResultForm& form) {
         return parts(words.project, words.parts, form);
       }},
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
         return rig(words.project, words.only_route, form);
       }},
      {"close-up",
       "what must be in, done and tested before each closure goes on",
       "linewright close-up . --output close-up.txt",
       {"text", "json"},
       declare_project,
       [](const Words& words, const ResultForm& form) { return close_up(words.project, form); }},
      {"walk-round",
       "sheets for looking at the aeroplane: what to see and measure",
       "linewright walk-round . --output sheets.txt",
       {"text", "csv"},
       declare_walk_round,
       [](const Words& words, const ResultForm& form) {
         return walk_round(words.project, words.only_route, form);
       }},
      {"rules",
       "list the rules",
       "linewright rules",
       {"text", "json"},
       [](CLI::App&, Words&) {},
       [](const Words&, const ResultForm& form) { return list_rules(form); }},
      {"explain",
       "a rule's limits, sources and mends, or a key of project files",
       "linewright explain chafe",
       {"text", "json"},
       declare_explain,
       [](const Words& words, const ResultForm& form) { return explain(words.rule, form); }},
      {"catalogue",
       "tubes, hoses, cables, wires and clamps, with sources",
       "linewright catalogue tube-aluminium-1/4",
       {"text", "json"},
       declare_catalogue,
       run_catalogue},
      {"schema",
       "the JSON Schema of project files, for editors",
       "linewright schema --output linewright.schema.json",
       {"json"},
       [](CLI::App&, Words&) {},
       [](const Words&, const ResultForm&) { return schema(); }},
      {"init",
       "write a small project that checks clean",
       "linewright init my-aeroplane",
       {},
       declare_init,
       [](const Words& words, const ResultForm&) { return init(words.directory, words.quiet); }},
  };
  return commands;
}

std::string joined(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : "|") + word;
  return text;
}

void declare_form(CLI::App& app, Words& words, const Command& command) {
  if (command.has_format)
    app.add_option("--format", words.format, "form of the result")
        ->type_name(joined(command.formats));
  if (command.run) {
    app.add_option("--output", words.output, "write the result to this new file")
        ->type_name("FILE");
    app.add_flag("--force", words.force, "let --output replace a file");
  }
  app.add_option("--color", words.color, "colour verdicts")->type_name("auto|always|never");
  app.add_option("--units", words.units, "lengths in text and CSV")->type_name("in|fraction|mm");
  app.add_flag("--quiet", words.quiet, "results and errors only, no notes");
}

void declare_all(CLI::App& app, Words& words) {
  app.name("linewright");
  app.set_help_flag("-h,--help", "show this and stop");
  app.set_version_flag("--version", "linewright " + std::string(version()),
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

std::vector<std::string> option_names(const CLI::App& app) {
  std::vector<std::string> names;
  for (const CLI::Option* option : app.get_options()) {
    for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
    for (const std::string& name : option->get_snames()) names.push_back("-" + name);
  }
  return names;
}

/// Checks the words that CLI11 explains badly: the command and all options.
std::string misspelling(const std::vector<std::string>& arguments, const CLI::App& app) {
  if (arguments.empty()) return "no command is given (linewright --help lists them)";
  const auto is_option = [](const std::string& word) { return word.size() > 1 && word[0] == '-'; };
  const auto command = std::find_if_not(arguments.begin(), arguments.end(), is_option);
  const std::string before = unknown_option({arguments.begin(), command}, option_names(app));
  if (!before.empty()) return before + "; options of a command come after it";
  if (command == arguments.end()) return {};
  std::vector<std::string> names;
  for (const Command& known : all_commands()) names.emplace_back(known.name);
  const std::string wrong = unknown_name("command", *command, names);
  if (!wrong.empty()) return wrong + " (linewright --help lists them)";
  const std::vector<std::string> rest(command + 1, arguments.end());
  const std::string option = unknown_option(rest, option_names(*app.get_subcommand(*command)));
  if (!option.empty() || *command != "leak-test") return option;
  return missing_action(rest);
}

/// Help and version are results; any other end of parsing is wrong usage.
Outcome after_parsing(const CLI::ParseError& end, const CLI::App& app) {
  std::ostringstream shown;
  std::ostringstream unused;
  if (end.get_exit_code() == static_cast<int>(CLI::ExitCodes::Success)) {
    app.exit(end, shown, unused);
    return {ExitCode::nothing_failed, shown.str(), ""};
  }
  Outcome outcome = refusal(one_line(end.what()));
  const std::vector<CLI::App*> chosen = app.get_subcommands();
  const std::string command = chosen.empty() ? "" : " " + chosen.front()->get_name();
  outcome.errors += "linewright" + command + " --help shows how it is used\n";
  return outcome;
}

ColourSurroundings colour_surroundings(bool terminal) {
  const auto value = [](const char* name) {
    const char* text = std::getenv(name);
    return std::string_view(text ? text : "");
  };
  return {terminal, !value("NO_COLOR").empty() || value("TERM") == "dumb"};
}

Outcome run_chosen(const CLI::App& app, const Words& words, bool terminal, const Show& show) {
  const std::string name = app.get_subcommands().front()->get_name();
  for (const Command& command : all_commands()) {
    if (command.name != name) continue;
    if (command.formats.empty()) return command.run(words, {});
    const auto form =
        read_form(words, command.formats, colour_surroundings(terminal && !words.output));
    if (!form) return refusal(form.error());
    if (command.keep_running) return command.keep_running(words, *form, show);
    return command.run(words, *form);
  }
  throw std::logic_error("a declared command has no entry");
}

/// Puts the result where it belongs. A result that cannot be written is an error of its own.
ExitCode deliver(const Outcome& outcome, const Words& words, std::ostream& out, std::ostream& err) {
  err << outcome.errors;
  if (outcome.result.empty()) return outcome.code;
  if (words.output) {
    const std::string wrong = write_whole_file({*words.output, outcome.result}, words.force);
    if (!wrong.empty()) {
      err << refusal(wrong).errors;
      return ExitCode::bad_input;
    }
    if (!words.quiet) err << "linewright: wrote " << *words.output << "\n";
    return outcome.code;
  }
  errno = 0;
  out << outcome.result << std::flush;
  // A reader such as `head` that has seen enough is no fault of the result.
  if (out || errno == EPIPE) return outcome.code;
  err << refusal("the result could not be written to standard output").errors;
  return ExitCode::bad_input;
}

ExitCode run(const std::vector<std::string>& arguments, std::ostream& out, std::ostream& err) {
  CLI::App app("Checks how the lines and control cables of a light aeroplane are run.");
  Words words;
  declare_all(app, words);
  const std::string wrong = misspelling(arguments, app);
  if (!wrong.empty()) return deliver(refusal(wrong), {}, out, err);
  try {
    app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
  } catch (const CLI::ParseError& end) {
    return deliver(after_parsing(end, app), {}, out, err);
  }
  const bool terminal = &out == &std::cout && ::isatty(STDOUT_FILENO) == 1;
  ExitCode shown = ExitCode::nothing_failed;
  const Show show = [&](const Outcome& outcome) {
    shown = deliver(outcome, words, out, err);
    return out.good();
  };
  const bool watched = app.got_subcommand("watch");
  const bool listened_to = &err == &std::cerr && ::isatty(STDERR_FILENO) == 1;
  std::optional<StillWorking> working;
  if (listened_to && !watched && !words.quiet)
    working.emplace([&err](std::string_view said) { err << said << std::flush; },
                    std::chrono::seconds(2), std::chrono::seconds(1));
  const Outcome last = run_chosen(app, words, terminal, show);
  working.reset();
  return out.good() ? deliver(last, words, out, err) : shown;
}

}  // namespace

int run_command_line(int argc, const char* const* argv, std::ostream& out, std::ostream& err) {
  try {
    const std::vector<std::string> arguments(argv + std::min(argc, 1), argv + argc);
    return static_cast<int>(run(arguments, out, err));
  } catch (const std::exception& error) {
    err << "linewright: internal error: " << error.what() << "\n";
  } catch (...) {
    err << "linewright: internal error\n";
  }
  return static_cast<int>(ExitCode::internal_error);
}

}  // namespace linewright
