#include "commands/command_options.hpp"

#include "commands/leak_test_line.hpp"

namespace linewright {

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

namespace {

void declare_filters(CLI::App& app, Words& words) {
  app.add_option("--rule", words.only_rule, "judge by this rule only")->type_name("RULE");
  app.add_option("--route", words.only_route, "judge this route only")->type_name("NAME");
  app.add_option("--by", words.by, "order of the findings")->type_name("gravity|route");
  app.add_flag("--strict", words.strict, "a warning counts as a fail");
  declare_set(app, words);
  app.add_flag("--verbose", words.verbose, "show what passed and was passed over, too");
}

}  // namespace

void declare_check(CLI::App& app, Words& words) {
  app.add_option("PROJECT", words.projects, "project files, or folders with project.yaml")
      ->required()
      ->type_name("")
      ->expected(1, CLI::detail::expected_max_vector_size);
  declare_filters(app, words);
}

void declare_watch(CLI::App& app, Words& words) {
  declare_project(app, words);
  declare_filters(app, words);
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

void declare_cutlist(CLI::App& app, Words& words) {
  declare_project(app, words);
  app.add_flag("--all-bends", words.verbose, "of soft lines, too, in text and pictures");
}

void declare_schedule(CLI::App& app, Words& words) {
  declare_project(app, words);
  app.add_option("--by", words.schedule_by, "in which order")->type_name("part|route|frame");
}

void declare_suggest(CLI::App& app, Words& words) {
  declare_project(app, words);
  app.add_option("--route", words.only_route, "this tube, hose or wire only")->type_name("NAME");
  app.add_flag("--write", words.write, "print the points to paste, and nothing else");
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

void declare_schema(CLI::App& app, Words& words) {
  app.add_option("--of", words.schema_of, "of what this command prints as JSON")
      ->type_name("COMMAND");
}

void declare_init(CLI::App& app, Words& words) {
  app.add_option("DIR", words.directory, "folder, made if it is not there")
      ->required()
      ->type_name("");
  app.add_flag("--quiet", words.quiet, "print nothing but errors");
}

}  // namespace linewright
