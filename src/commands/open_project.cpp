#include "commands/open_project.hpp"

#include <fmt/format.h>

#include "catalogue/catalogue.hpp"
#include "input/load_project.hpp"
#include "planning/near_twins.hpp"
#include "planning/taken_values.hpp"
#include "render/diagnostic_text.hpp"

namespace linewright {

namespace {

/// What turns a name relative to the project's folder into a path as the user would write it.
std::string path_prefix(const std::filesystem::path& path) {
  std::error_code ignored;
  const bool folder = std::filesystem::is_directory(path, ignored);
  const std::filesystem::path base = (folder ? path : path.parent_path()).lexically_normal();
  return base.empty() || base == "." ? std::string() : (base / "").string();
}

}  // namespace

Outcome refused(const std::vector<Diagnostic>& errors, const std::filesystem::path& path) {
  const std::string prefix = path_prefix(path);
  Outcome outcome;
  outcome.code = ExitCode::bad_input;
  for (const Diagnostic& error : errors) {
    outcome.errors += diagnostic_text(error, prefix);
    if (!outcome.errors.ends_with('\n')) outcome.errors += '\n';
  }
  outcome.errors += fmt::format("linewright: {} {} in the project's files; nothing was judged\n",
                                errors.size(), errors.size() == 1 ? "error" : "errors");
  return outcome;
}

OpenedProject open_with_files(const std::filesystem::path& path) {
  if (path.empty()) return {refusal("the path of the project is empty"), {}};
  LoadResult loaded = load_project(path, built_in_catalogue());
  if (!loaded.project) return {refused(loaded.errors, path), std::move(loaded.files)};
  std::vector<std::string>& assumptions = loaded.project->assumptions;
  for (std::string& sentence : taken_values(*loaded.project))
    assumptions.push_back(std::move(sentence));
  for (std::string& question : near_twins(*loaded.project))
    assumptions.push_back(std::move(question));
  return {*std::move(loaded.project), std::move(loaded.files)};
}

Expected<Project, Outcome> open_project(const std::filesystem::path& path) {
  return open_with_files(path).project;
}

Report describe(const PreparedProject& prepared) {
  CutList cuts = cut_list(prepared);
  Report report;
  report.project_name = prepared.project->name;
  report.assumptions = prepared.project->assumptions;
  for (std::string& sentence : wall_assumptions(prepared.walls))
    report.assumptions.push_back(std::move(sentence));
  report.systems = std::move(cuts.systems);
  for (RouteCut& cut : cuts.routes) {
    const PreparedRoute* route = prepared.find_route(cut.name);
    report.routes.push_back({std::move(cut), route->from->name, route->to->name});
  }
  return report;
}

}  // namespace linewright
