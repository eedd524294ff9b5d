#include "commands/open_project.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "catalogue/catalogue.hpp"
#include "input/load_project.hpp"
#include "physics/pilot_force.hpp"
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

/// Says what was taken for a pilot's force where a route gives only what a pound of it pulls.
void assume_pilot_forces(Project& project) {
  for (const PilotForce& row : pilot_forces) {
    std::vector<std::string> names;
    for (const Route& route : project.routes)
      if (is_same_control(route.control, row.control) && takes_pilot_force(route))
        names.push_back(route.name);
    if (!names.empty())
      project.assumptions.push_back(fmt::format(
          "pilot_force is not stated for {}: {:.0f} lbf at {} was taken, the most of 14 CFR "
          "23.397(b)",
          fmt::join(names, ", "), row.most_lbf, row.grip));
  }
}

/// Says that one pilot was taken where two could pull half as much again.
void assume_one_pilot(Project& project) {
  std::vector<std::string> names;
  for (const Route& route : project.routes)
    if (route.is_primary_control() && pilot_pull_lbf(route)) names.push_back(route.name);
  if (project.dual_controls || names.empty()) return;
  project.assumptions.push_back(
      fmt::format("dual_controls is not stated: one pilot was taken to pull on {}; two together "
                  "pull {:g} times as much (14 CFR 23.399(b))",
                  fmt::join(names, ", "), two_pilots_ratio));
}

/// Says which cables were taken to be alone: how slack another one's pull leaves them follows from
/// the control that both name.
void assume_no_second_cable(Project& project) {
  std::vector<std::string> names;
  for (const Route& route : project.routes)
    if (route.is_primary_control() && route.control.empty() && route.tension)
      names.push_back(route.name);
  if (names.empty()) return;
  project.assumptions.push_back(
      fmt::format("control is not stated for {}: no other cable was taken to work with {}, so that "
                  "none slackens {} when it is pulled",
                  fmt::join(names, ", "), names.size() == 1 ? "it" : "them",
                  names.size() == 1 ? "it" : "them"));
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
  assume_pilot_forces(*loaded.project);
  assume_one_pilot(*loaded.project);
  assume_no_second_cable(*loaded.project);
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
