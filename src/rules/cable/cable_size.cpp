#include <fmt/format.h>

#include "physics/pilot_force.hpp"
#include "rules/cable/such_as.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

constexpr LimitRow least_primary{.name = "primary-cable",
                                 .subject = "cable of a primary control, diameter",
                                 .value = 0.125,
                                 .source = "14 CFR 23.689(a)(1)",
                                 .mark = Mark::verified};
constexpr LimitRow secondary{
    .name = "secondary-cable",
    .subject = "cable of any other control, diameter",
    .value = 0,
    .source =
        "14 CFR 23.689(f): a tab cable may be smaller where the aeroplane stays "
        "controllable with the tab at its worst",
    .mark = Mark::verified};

constexpr LimitRow said_secondary{
    .name = "primary-by-its-name",
    .subject = "cable of a rudder, elevator or aileron that states primary: false, diameter",
    .value = 0.125,
    .source = "these are primary controls, 14 CFR 23.689(a)(1), whatever the file says",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};

constexpr auto cable_size_limits = limit_table({least_primary, secondary, said_secondary});

/// "1/8 in".
std::string least_words() {
  return fmt::format("1/{:g} in", 1 / least_primary.value);
}

Judgement judge_cable(const RuleContext& context, const PreparedRoute& route) {
  const Line& line = *route.line;
  Judgement judgement = context.at(route, route.length_in() / 2);
  judgement.location = route.route->line_where;
  if (!route.route->is_primary_control() && pilot_forces_on(*route.route)) {
    const bool large = holds(judgement, line.outside_diameter_in, {said_secondary});
    judgement.message =
        line.name +
        (large ? " would be large enough for " : " is under " + least_words() + " on ") +
        route.route->control + ", which the file says is no primary control";
    if (!large) judgement.mend = "leave out primary: false, or waive this with the reason";
    return judgement;
  }
  if (!route.route->is_primary_control()) {
    holds_true(judgement, true, secondary);
    judgement.value = line.outside_diameter_in;
    judgement.message = "no primary control hangs on it, so it may be under " + least_words();
    return judgement;
  }
  const std::string control =
      route.route->control.empty() ? "a primary control" : route.route->control;
  if (holds(judgement, line.outside_diameter_in, {least_primary})) {
    judgement.message = line.name + " is large enough for " + control;
    return judgement;
  }
  judgement.message = line.name + " is under " + least_words() +
                      ", the least for a primary control (" + control +
                      "); a builder who knows why a smaller one serves may waive this with the "
                      "reason";
  judgement.mend = "use a cable of " + least_words() + " or more" +
                   such_as(context.prepared.project->catalogue, line, [](const Line& each) {
                     return each.outside_diameter_in >= least_primary.value - limit_rounding;
                   });
  return judgement;
}

std::vector<Judgement> judge_cable_size(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes)
    if (route.line->kind == LineKind::cable) judgements.push_back(judge_cable(context, route));
  return judgements;
}

}  // namespace

const Rule& cable_size_rule() {
  static const Rule rule{
      .name = "cable-size",
      .purpose = "a primary control does not hang on a cable under 1/8 in",
      .explanation =
          R"(Every cable is taken as primary unless its route says `primary: false` or `control:
trim`; one that states so of a rudder, elevator or aileron is asked about. Its nominal diameter must not be under the limit: a thin cable has less strength to lose
by wear and broken wires. Secondary cables may be smaller. Certificated types with 3/32 in in
the rudder circuit exist, so a builder who knows why a smaller cable serves may waive the limit
in the file, with the reason. Strength is judged by `cable-tension`.)",
      .mend = "Use a larger cable, or waive the limit with the reason.",
      .limits = cable_size_limits,
      .catalogue_limits = "",
      .judge = judge_cable_size};
  return rule;
}

}  // namespace linewright
