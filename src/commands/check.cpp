#include <algorithm>

#include "commands/checked_report.hpp"
#include "commands/commands.hpp"
#include "commands/known_name.hpp"
#include "commands/open_project.hpp"
#include "lines/near/passed_over.hpp"
#include "lines/prepare.hpp"
#include "render/check_json.hpp"
#include "render/check_text.hpp"
#include "rules/judge.hpp"
#include "rules/registry.hpp"

namespace linewright {

namespace {

std::string wrong_filter(const CheckOptions& options, const Project& project) {
  if (options.only_rule) {
    const std::string wrong = unknown_name("rule", *options.only_rule, rule_names());
    if (!wrong.empty()) return wrong;
  }
  if (!options.only_route) return {};
  std::vector<std::string> routes;
  for (const Route& route : project.routes) routes.push_back(route.name);
  return unknown_name("route", *options.only_route, routes);
}

/// True for the route asked for, and for one with a judgement against it.
bool is_about(const Report& report, const std::string& route, const std::string& asked) {
  return route == asked ||
         std::any_of(report.judgements.begin(), report.judgements.end(),
                     [&](const Judgement& judgement) { return judgement.route == route; });
}

}  // namespace

std::variant<Report, Outcome> checked_report(const CheckOptions& options, MeshStore& meshes) {
  const std::variant<Project, Outcome> opened = open_project(options.project);
  if (const Outcome* refused = std::get_if<Outcome>(&opened)) return *refused;
  return checked_report(std::get<Project>(opened), options, meshes);
}

std::variant<Report, Outcome> checked_report(const Project& project, const CheckOptions& options,
                                             MeshStore& meshes) {
  const std::string wrong = wrong_filter(options, project);
  if (!wrong.empty()) return refusal(wrong);
  const std::variant<MeshFields, Outcome> fields = meshes.fields_of(project, options.project);
  if (const Outcome* refused = std::get_if<Outcome>(&fields)) return *refused;

  const PreparedProject prepared = prepare(project, std::get<MeshFields>(fields));
  Report report = describe(prepared);
  report.judgements =
      judge(prepared, options.form.phrasing(), options.only_rule, options.only_route);
  report.passed_over = passed_over_near_fittings(prepared, options.only_route.value_or(""));
  report.notes = mesh_notes(prepared, options.form.phrasing());
  if (options.only_route)
    std::erase_if(report.routes, [&](const RouteReport& route) {
      return !is_about(report, route.cut.name, *options.only_route);
    });
  return report;
}

ExitCode exit_code(const Report& report, bool strict) {
  const Tally tally = tally_of(report.judgements);
  const bool failed = tally.fail > 0 || tally.unknown > 0 || (strict && tally.warn > 0);
  return failed ? ExitCode::failed : ExitCode::nothing_failed;
}

Outcome check(const CheckOptions& options) {
  MeshStore meshes;
  const std::variant<Report, Outcome> checked = checked_report(options, meshes);
  if (const Outcome* refused = std::get_if<Outcome>(&checked)) return *refused;
  const Report& report = std::get<Report>(checked);
  Outcome outcome;
  outcome.code = exit_code(report, options.strict);
  outcome.result = options.form.format == Format::json ? check_json(report)
                                                       : check_text(report, options.form.style);
  return outcome;
}

}  // namespace linewright
