#include <algorithm>

#include "commands/commands.hpp"
#include "commands/known_name.hpp"
#include "commands/open_project.hpp"
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

ExitCode exit_code(const Tally& tally, bool strict) {
  const bool failed = tally.fail > 0 || tally.unknown > 0 || (strict && tally.warn > 0);
  return failed ? ExitCode::failed : ExitCode::nothing_failed;
}

/// True for the route asked for, and for one with a judgement against it.
bool is_about(const Report& report, const std::string& route, const std::string& asked) {
  return route == asked ||
         std::any_of(report.judgements.begin(), report.judgements.end(),
                     [&](const Judgement& judgement) { return judgement.route == route; });
}

}  // namespace

Outcome check(const CheckOptions& options) {
  const std::variant<Project, Outcome> opened = open_project(options.project);
  if (const Outcome* refused = std::get_if<Outcome>(&opened)) return *refused;
  const Project& project = std::get<Project>(opened);
  const std::string wrong = wrong_filter(options, project);
  if (!wrong.empty()) return refusal(wrong);

  const PreparedProject prepared = prepare(project);
  Report report = describe(prepared);
  report.judgements =
      judge(prepared, options.form.phrasing(), options.only_rule, options.only_route);
  if (options.only_route)
    std::erase_if(report.routes, [&](const RouteReport& route) {
      return !is_about(report, route.cut.name, *options.only_route);
    });
  Outcome outcome;
  outcome.code = exit_code(tally_of(report.judgements), options.strict);
  outcome.result = options.form.format == Format::json ? check_json(report)
                                                       : check_text(report, options.form.style);
  return outcome;
}

}  // namespace linewright
