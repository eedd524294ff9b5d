#include <algorithm>
#include <array>
#include <map>
#include <tuple>
#include <vector>

#include "commands/commands.hpp"
#include "commands/known_name.hpp"
#include "commands/mesh_store.hpp"
#include "commands/open_project.hpp"
#include "lines/prepare.hpp"
#include "model/units.hpp"
#include "planning/suggest_supports.hpp"
#include "render/suggest_json.hpp"
#include "render/suggest_text.hpp"
#include "rules/judge.hpp"
#include "rules/space/failed_clamp.hpp"

namespace linewright {

namespace {

constexpr const char* unsound_words =
    "linewright: not all is right with these supports: without --write it says what\n";

/// Places of new supports, as they are written: thousandths of an inch, hundredths of a millimetre
/// or what a tape has.
double place_step_in(const Route& route, LengthUnit unit) {
  if (unit == LengthUnit::inch_fraction) return 1.0 / 32;
  return route.in_millimetres ? 0.01 / mm_per_in : 0.001;
}

bool takes_clamps(const Project& project, const Route& route) {
  return !works_control(project.catalogue.find_line(route.line)->kind);
}

bool is_right(const Judgement& judgement) {
  return judgement.verdict == Verdict::pass || judgement.verdict == Verdict::waived;
}

/// Asks the rules about one route of a project, again and again.
class RouteJudge {
 public:
  RouteJudge(const Obstacles& structure, const Phrasing& phrasing, std::string route)
      : structure_(structure), phrasing_(phrasing), route_(std::move(route)) {
    rules_.assign(std::begin(support_rules), std::end(support_rules));
    rules_.insert(rules_.end(), std::begin(rules_beside_supports), std::end(rules_beside_supports));
  }

  std::vector<RouteFault> operator()(const Project& project) const {
    const PreparedProject prepared = prepare_in(structure_, project);
    std::vector<RouteFault> faults;
    for (Judgement& judgement : judge_on_route(prepared, phrasing_, rules_, route_)) {
      if (is_right(judgement)) continue;
      const bool lost = is_of_lost_clamp(judgement);
      faults.push_back({std::move(judgement), lost});
    }
    return faults;
  }

 private:
  const Obstacles& structure_;
  Phrasing phrasing_;
  std::string route_;
  std::vector<std::string_view> rules_;
};

std::string wrong_clamped_route(const Project& project, const std::optional<std::string>& asked) {
  if (!asked) return {};
  std::vector<std::string> names;
  for (const Route& route : project.routes) names.push_back(route.name);
  std::string wrong = unknown_name("route", *asked, names, "linewright cutlist lists them");
  if (!wrong.empty()) return wrong;
  for (const Route& route : project.routes)
    if (route.name == *asked && !takes_clamps(project, route))
      return "route '" + *asked +
             "' works a control: clamps would seize it. `linewright rig` says of cables how far "
             "they hang between their guides";
  return {};
}

/// How many judgements of each kind there are, however they are worded.
using FaultKinds = std::map<std::tuple<std::string, std::string, std::string, Verdict>, int>;

std::tuple<std::string, std::string, std::string, Verdict> finding_key(const Judgement& judgement) {
  return {judgement.rule, judgement.route, judgement.with.value_or(""), judgement.verdict};
}

/// What all rules say of the second project that they do not say of the first.
std::vector<Judgement> said_anew(const Project& first, const Project& second,
                                 const Obstacles& structure, const Phrasing& phrasing) {
  FaultKinds before;
  for (const Judgement& judgement : judge(prepare_in(structure, first), phrasing))
    if (!is_right(judgement)) ++before[finding_key(judgement)];
  std::vector<Judgement> anew;
  for (Judgement& judgement : judge(prepare_in(structure, second), phrasing))
    if (!is_right(judgement) && --before[finding_key(judgement)] < 0)
      anew.push_back(std::move(judgement));
  return anew;
}

/// A line that was right by itself may be wrong with what was suggested for another after it.
void take_back(std::vector<SupportSuggestion>& routes, const std::vector<Judgement>& anew) {
  for (const Judgement& judgement : anew)
    if (std::find(std::begin(support_rules), std::end(support_rules), judgement.rule) !=
        std::end(support_rules))
      for (SupportSuggestion& each : routes)
        if (each.route == judgement.route ||
            (judgement.with_is_route && each.route == judgement.with))
          each.possible = false;
}

/// The route of which this one is the twin: it has its place in the files from that one.
std::string mirrored_route(const Project& project, const Route& twin) {
  for (const Route& route : project.routes) {
    if (&route == &twin) break;
    if (route.where == twin.where) return route.name;
  }
  return {};
}

/// Puts what is suggested for each route into the project before the next is looked at. A route
/// that hangs on another by a tee, and cannot be held while that one hangs too far, gets a second
/// look.
std::vector<SupportSuggestion> suggest_all(Project& project, const std::vector<std::size_t>& asked,
                                           const Obstacles& structure, const ResultForm& form) {
  std::vector<SupportSuggestion> found(asked.size());
  for (const bool again : {false, true})
    for (std::size_t i = 0; i < asked.size(); ++i) {
      Route& route = project.routes[asked[i]];
      if (again && (found[i].was_found || asked.size() == 1)) continue;
      found[i] = suggest_supports(project, structure, route.name,
                                  place_step_in(route, form.phrasing().unit),
                                  RouteJudge(structure, form.phrasing(), route.name));
      found[i].mirror_of = mirrored_route(project, route);
      if (found[i].was_found) route = found[i].with;
    }
  return found;
}

std::vector<std::string> routes_measured(const std::vector<SupportSuggestion>& routes,
                                         const Project& project) {
  std::vector<std::string> measured;
  for (const SupportSuggestion& route : routes)
    if (route.was_found &&
        std::any_of(project.built.begin(), project.built.end(),
                    [&](const Measurement& each) { return each.route == route.route; }))
      measured.push_back(route.route);
  return measured;
}

/// What is said where nothing but the YAML is written.
std::string beside_yaml(const SuggestReport& report) {
  std::string words = report.is_sound() ? "" : unsound_words;
  const std::string measured = words_on_measures(report);
  if (!measured.empty()) words += "linewright: " + measured + "\n";
  return words;
}

}  // namespace

Outcome suggest(const SuggestOptions& options) {
  const auto opened = open_project(options.project);
  if (!opened) return opened.error();
  const std::string wrong = wrong_clamped_route(*opened, options.only_route);
  if (!wrong.empty()) return refusal(wrong);
  MeshStore meshes;
  const auto fields = meshes.fields_of(*opened, options.project);
  if (!fields) return fields.error();
  std::vector<std::size_t> asked;
  for (std::size_t i = 0; i < opened->routes.size(); ++i)
    if (options.only_route ? opened->routes[i].name == *options.only_route
                           : takes_clamps(*opened, opened->routes[i]))
      asked.push_back(i);
  if (asked.empty()) return refusal("no route of the project is a tube, hose or wire");
  Project project = *opened;
  SuggestReport report;
  report.project_name = project.name;
  report.assumptions = project.assumptions;
  const Obstacles structure(project.structure, *fields);
  report.routes = suggest_all(project, asked, structure, options.form);
  report.new_faults = said_anew(*opened, project, structure, options.form.phrasing());
  take_back(report.routes, report.new_faults);
  report.measured_routes = routes_measured(report.routes, *opened);
  const ExitCode code = report.is_sound() ? ExitCode::nothing_failed : ExitCode::failed;
  if (options.write) {
    const std::string yaml = suggest_yaml(report, options.form.style.phrasing.unit);
    if (!yaml.empty()) return {code, yaml, beside_yaml(report)};
    return {code, "",
            "linewright: no choice of supports does: without --write it says where and why\n"};
  }
  return {code,
          options.form.format == Format::json ? suggest_json(report)
                                              : suggest_text(report, options.form.style),
          ""};
}

}  // namespace linewright
