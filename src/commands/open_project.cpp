#include "commands/open_project.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <span>

#include "catalogue/catalogue.hpp"
#include "input/error_list.hpp"
#include "input/load_as_if.hpp"
#include "input/set_values.hpp"
#include "lines/as_built.hpp"
#include "planning/moved_places.hpp"
#include "planning/near_twins.hpp"
#include "planning/taken_values.hpp"
#include "render/diagnostic_text.hpp"
#include "system/path_text.hpp"

namespace linewright {

namespace {

/// What turns a name relative to the project's folder into a path as the user would write it.
std::string path_prefix(const std::filesystem::path& path) {
  namespace fs = std::filesystem;
  const fs::path here(u8".");
  std::error_code unknown;
  const bool folder = fs::is_directory(path, unknown);
  // The other files of a project lie beside the file itself, wherever a link to it may be.
  if (!folder && fs::is_symlink(path, unknown)) {
    const fs::path beside = fs::proximate(fs::canonical(path, unknown).parent_path(), unknown);
    if (!unknown) return beside == here ? std::string() : text_of(beside / fs::path());
  }
  const fs::path base = (folder ? path : path.parent_path()).lexically_normal();
  return base.empty() || base == here ? std::string() : text_of(base / fs::path());
}

/// One slip of the hand can be wrong in a thousand places, and who mends it needs to see few.
constexpr std::size_t most_shown = 20;

std::string count_words(const std::vector<Diagnostic>& errors) {
  const std::size_t count = std::min(errors.size(), most_errors);
  std::string words = fmt::format("{}{} {}", errors.size() > count ? "more than " : "", count,
                                  count == 1 ? "error" : "errors");
  if (count > most_shown) words += fmt::format(", the first {} of them shown,", most_shown);
  return words;
}

/// True for what is wrong with a value of --set.
bool is_set(const Diagnostic& error) {
  return error.where.file == set_option;
}

std::vector<BuiltRoute> built_routes(const PreparedProject& prepared) {
  std::vector<BuiltRoute> built;
  for (const PreparedRoute& route : prepared.routes) {
    const std::vector<Measurement>& all = prepared.project->built;
    const auto count = std::count_if(all.begin(), all.end(), [&](const Measurement& each) {
      return each.route == route.route->name;
    });
    const double as_built = route.as_built_in();
    if (count > 0)
      built.push_back(
          {route.route->name, as_built, route.length_in() - as_built, static_cast<int>(count)});
  }
  return built;
}

}  // namespace

Outcome refused(const std::vector<Diagnostic>& errors, const std::filesystem::path& path) {
  const std::string prefix = path_prefix(path);
  Outcome outcome;
  outcome.code = ExitCode::bad_input;
  for (const Diagnostic& error : std::span(errors).first(std::min(errors.size(), most_shown))) {
    outcome.errors += diagnostic_text(error, is_set(error) ? std::string() : prefix);
    if (!outcome.errors.ends_with('\n')) outcome.errors += '\n';
  }
  const bool any_set = std::any_of(errors.begin(), errors.end(), is_set);
  outcome.errors += fmt::format("linewright: {} in {}; nothing was judged\n", count_words(errors),
                                any_set ? "the project with what is set" : "the project's files");
  return outcome;
}

OpenedProject open_with_files(const std::filesystem::path& path,
                              const std::vector<std::string>& set) {
  if (path.empty()) return {refusal("the path of the project is empty"), {}, {}};
  LoadedAsIf as_if = load_as_if(path, built_in_catalogue(), set);
  LoadResult& loaded = as_if.loaded;
  if (!loaded.project) return {refused(loaded.errors, path), std::move(loaded.files), {}};
  std::vector<std::string>& assumptions = loaded.project->assumptions;
  for (std::string& sentence : taken_values(*loaded.project))
    assumptions.push_back(std::move(sentence));
  for (std::string& question : near_twins(*loaded.project))
    assumptions.push_back(std::move(question));
  std::vector<Diagnostic> faults;
  for (MeasureFault& fault : take_measured(*loaded.project))
    faults.push_back({fault.where, std::move(fault.words), std::move(fault.suggestion), {}});
  if (!faults.empty()) {
    show_in_files(faults, as_if.files);
    return {refused(faults, path), std::move(loaded.files), {}};
  }
  for (std::string& question : moved_places(*loaded.project))
    loaded.project->assumptions.push_back(std::move(question));
  return {*std::move(loaded.project), std::move(loaded.files), std::move(as_if.set)};
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
  // Cuts are in the order of the routes.
  for (std::size_t i = 0; i < cuts.routes.size(); ++i) {
    const PreparedRoute& route = prepared.routes[i];
    report.routes.push_back({std::move(cuts.routes[i]), route.from->name, route.to->name});
  }
  report.built = built_routes(prepared);
  return report;
}

}  // namespace linewright
