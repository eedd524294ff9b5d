#include <algorithm>
#include <utility>

#include "commands/checked_report.hpp"
#include "commands/commands.hpp"
#include "commands/known_name.hpp"
#include "commands/open_project.hpp"
#include "lines/near/passed_over.hpp"
#include "lines/prepare.hpp"
#include "render/check_json.hpp"
#include "render/check_sarif.hpp"
#include "render/check_text.hpp"
#include "rules/judge.hpp"
#include "rules/judge_again.hpp"
#include "rules/registry.hpp"
#include "rules/rests_on.hpp"

namespace linewright {

namespace {

std::string wrong_filter(const CheckOptions& options, const Project& project) {
  if (options.only_rule) {
    const std::string wrong = unknown_name("rule", *options.only_rule, rule_names(), see_all_rules);
    if (!wrong.empty()) return wrong;
  }
  if (!options.only_route) return {};
  std::vector<std::string> routes;
  for (const Route& route : project.routes) routes.push_back(route.name);
  return unknown_name("route", *options.only_route, routes, "linewright cutlist lists them");
}

/// True for the route asked for, and for one with a judgement against it.
bool is_about(const Report& report, const std::string& route, const std::string& asked) {
  return route == asked ||
         std::any_of(report.judgements.begin(), report.judgements.end(),
                     [&](const Judgement& judgement) { return judgement.route == route; });
}

bool is_judged(const Judgement& judgement) {
  return judgement.rule != "waivers";
}

/// Says where silence means that there was nothing to look at, not that all is well.
void note_silence(Report& report, const CheckOptions& options) {
  if (std::any_of(report.judgements.begin(), report.judgements.end(), is_judged)) return;
  if (options.only_rule || options.only_route) {
    report.notes.push_back(
        (options.only_rule ? *options.only_rule + " has nothing"
                           : std::string("nothing is there")) +
        " to judge" + (options.only_route ? " on " + *options.only_route : " in this project"));
    return;
  }
  report.nothing_judged = true;
  report.notes.push_back(
      "nothing was judged: the project has no route that a rule has anything to say of; describe "
      "the "
      "lines under `routes`");
}

/// Says once a route which of its corners are no bends.
void note_straightened(Report& report, const std::optional<std::string>& only_route) {
  for (const RouteReport& route : report.routes)
    if (!route.cut.straightened.empty() && (!only_route || route.cut.name == *only_route))
      report.notes.push_back(route.cut.name + " was taken as " + straightened_words(route.cut));
}

/// What is told of the judgements of a project.
Report report_of(std::vector<Judgement> judgements, const PreparedProject& prepared,
                 const OpenedProject& opened, const CheckOptions& options, MeshStore& meshes) {
  Report report = describe(prepared);
  report.set_values = opened.set;
  report.judgements = std::move(judgements);
  if (options.form.style.verbose || options.form.format == Format::json)
    report.passed_over = passed_over_near_fittings(prepared, options.only_route.value_or(""));
  report.notes = meshes.notes_on(prepared, options.form.phrasing());
  note_straightened(report, options.only_route);
  note_silence(report, options);
  if (options.only_route)
    std::erase_if(report.routes, [&](const RouteReport& route) {
      return !is_about(report, route.cut.name, *options.only_route);
    });
  if (options.only_route)
    std::erase_if(report.built,
                  [&](const BuiltRoute& built) { return !report.find_route(built.name); });
  return report;
}

}  // namespace

Expected<Report, Outcome> checked_report(const CheckOptions& options, MeshStore& meshes) {
  const OpenedProject opened = open_with_files(options.project, options.set);
  return checked_report(opened, options, meshes);
}

Expected<Report, Outcome> checked_report(const OpenedProject& opened, const CheckOptions& options,
                                         MeshStore& meshes) {
  if (!opened.project) return opened.project.error();
  const Project& project = *opened.project;
  const std::string wrong = wrong_filter(options, project);
  if (!wrong.empty()) return refusal(wrong);
  const auto fields = meshes.fields_of(project, options.project);
  if (!fields) return fields.error();

  const PreparedProject prepared = prepare(project, *fields);
  std::vector<Judgement> judgements =
      judge(prepared, options.form.phrasing(), options.only_rule, options.only_route);
  if (options.only_rule)
    for (Judgement& judgement :
         not_known_to(*options.only_rule, prepared, options.form.phrasing(), options.only_route))
      judgements.push_back(std::move(judgement));
  return report_of(std::move(judgements), prepared, opened, options, meshes);
}

std::optional<Report> report_at_once(const OpenedProject& opened, const CheckOptions& options,
                                     MeshStore& meshes, const JudgedProject& before,
                                     const std::vector<Judgement>& said) {
  if (!opened.project || options.only_rule || options.only_route) return std::nullopt;
  const auto fields = meshes.fields_of(*opened.project, options.project);
  if (!fields || *fields != before.meshes) return std::nullopt;
  const PreparedProject prepared = prepare(*opened.project, *fields);
  auto judgements = judge_again(prepared, options.form.phrasing(), before.project, said);
  if (!judgements) return std::nullopt;
  return report_of(*std::move(judgements), prepared, opened, options, meshes);
}

ExitCode exit_code(const Report& report, bool strict) {
  const Tally tally = tally_of(report.judgements);
  const bool failed =
      tally.fail > 0 || tally.unknown > 0 || (strict && tally.warn > 0) || report.nothing_judged;
  return failed ? ExitCode::failed : ExitCode::nothing_failed;
}

namespace {

std::string written_as(const Report& report, const ResultForm& form) {
  switch (form.format) {
    case Format::json:
      return check_json(report);
    case Format::sarif:
      return check_sarif(report, all_rules());
    case Format::csv:
    case Format::svg:  // not of `check`
    case Format::text:
      break;
  }
  return check_text(report, form.style);
}

}  // namespace

Outcome check(const CheckOptions& options) {
  MeshStore meshes;
  const auto report = checked_report(options, meshes);
  if (!report) return report.error();
  Outcome outcome;
  outcome.code = exit_code(*report, options.strict);
  outcome.result = written_as(*report, options.form);
  return outcome;
}

}  // namespace linewright
