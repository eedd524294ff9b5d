#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "lines/cable_friction.hpp"
#include "physics/pilot_force.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

constexpr std::string_view light_controls = "small corrections are lost in more friction than this";

constexpr LimitRow friction_row(std::string_view name, std::string_view subject, double most_lbf) {
  return {.name = name,
          .subject = subject,
          .value = most_lbf,
          .unit = Unit::pound_force,
          .sense = LimitSense::at_most,
          .source = light_controls,
          .mark = Mark::common_practice,
          .broken = Verdict::warn};
}

constexpr LimitRow travel_lost{.name = "travel-lost",
                               .subject = "stretch under the limit pull",
                               .value = 0.5,
                               .sense = LimitSense::at_most,
                               .source = "a control that still moves its surface at the limit",
                               .mark = Mark::common_practice,
                               .broken = Verdict::warn,
                               .times = "smaller travel from neutral"};
/// In the order of `pilot_forces`; a wheel's are the same.
constexpr std::array frictions{
    friction_row("rudder-friction", "friction of a rudder's cables, at the pedal", 7),
    friction_row("elevator-friction", "friction of an elevator's cables, at stick or wheel", 3),
    friction_row("aileron-friction", "friction of an aileron's cables, at stick or wheel", 2)};

constexpr auto limits = limit_table({travel_lost, frictions[0], frictions[1], frictions[2]});

const LimitRow& friction_row_of(const std::string& control) {
  std::size_t row = 0;
  while (!is_same_control(pilot_forces[row].control, control)) ++row;
  return frictions[row];
}

std::optional<Judgement> judge_stretch(const RuleContext& context, const PreparedRoute& route) {
  const Route& stated = *route.route;
  const CableState& state = context.motion.cables[context.index_of(route)];
  const std::optional<double> lost = travel_lost_in(route, state);
  if (!lost || !stated.travel) return std::nullopt;
  const double travel = std::min(stated.travel->forward_in, stated.travel->aft_in);
  if (travel <= 0) return std::nullopt;
  Judgement judgement = context.at(route, route.length_in() / 2);
  judgement.location = stated.travel->where;
  const Phrasing& phrasing = context.phrasing;
  const bool held = holds(judgement, *lost, {travel_lost * travel});
  judgement.message =
      fmt::format("a pull of {:.0f} lbf stretches it by ", *limit_pull_lbf(stated)) +
      phrasing.length(*lost) + fmt::format(" more, {:.0f} % of its ", 100 * *lost / travel) +
      phrasing.length(travel) + " of travel";
  if (!held)
    judgement.mend =
        "use a stiffer cable, or a longer arm at both ends: more travel and less pull for the same";
  return judgement;
}

/// Friction of the cable at its rigged tension, felt through its lever; nothing where not known.
std::optional<double> felt_lbf(const PreparedRoute& route) {
  const Route& stated = *route.route;
  if (!stated.lever || !stated.tension) return std::nullopt;
  const CableFriction friction = cable_friction(route);
  if (!friction.missing.empty()) return std::nullopt;
  return friction.to_move_lbf(stated.tension->rigged_lbf) / stated.lever->ratio;
}

/// Of all cables of the control, which move at once. Said of the first of them.
std::optional<Judgement> judge_friction(const RuleContext& context, const PreparedRoute& route) {
  const PilotForce* force = pilot_forces_on(*route.route);
  if (!force || !route.route->is_primary_control() || !route.route->lever) return std::nullopt;
  double sum = 0;
  for (const PreparedRoute& other : context.prepared.routes) {
    if (&other != &route && !work_together(route, other)) continue;
    if (&other < &route) return std::nullopt;
    const std::optional<double> felt = felt_lbf(other);
    if (!felt) return std::nullopt;
    sum += *felt;
  }
  Judgement judgement = context.at(route, route.length_in() / 2);
  judgement.location = route.route->lever->where;
  const bool held = holds(judgement, sum, {friction_row_of(route.route->control)});
  judgement.message =
      fmt::format("{:.1f} lbf at {} overcome the friction of all cables of ", sum, force->grip) +
      route.route->control;
  if (!held)
    judgement.mend = "lead the cables over pulleys where they turn in fairleads and sleeves";
  return judgement;
}

std::vector<Judgement> judge_control_feel(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes) {
    if (route.line->kind != LineKind::cable) continue;
    if (const auto stretch = judge_stretch(context, route)) judgements.push_back(*stretch);
    if (const auto friction = judge_friction(context, route)) judgements.push_back(*friction);
  }
  return judgements;
}

/// What of a control cable is not stated, without which its stretch and friction are not judged.
std::string unstated_words(const PreparedRoute& route) {
  const Route& stated = *route.route;
  std::string words;
  const auto add = [&words](bool lacks, const std::string& what) {
    if (lacks) words += (words.empty() ? "" : ", ") + what;
  };
  add(!stated.tension, "its rigged tension");
  add(!limit_pull_lbf(stated), "its limit load");
  add(!stated.travel, "its travel");
  add(!stated.lever, "its lever ratio");
  add(!route.line->axial_stiffness_lbf, "the stretch of " + route.line->name);
  for (const std::string& guide : cable_friction(route).missing) add(true, guide);
  return words;
}

std::vector<Judgement> control_feel_lacking(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes) {
    if (!route.route->is_primary_control()) continue;
    const std::string unstated = unstated_words(route);
    if (unstated.empty()) continue;
    Judgement judgement = context.at(route, route.length_in() / 2);
    judgement.location = route.route->where;
    leave_unknown(judgement, travel_lost);
    judgement.message = "how the control feels is not known for want of " + unstated;
    judgement.mend = "state it in the project";
    judgements.push_back(judgement);
  }
  return judgements;
}

}  // namespace

const Rule& control_feel_rule() {
  static const Rule rule{
      .name = "control-feel",
      .purpose = "stretch leaves a control its travel, and friction its small forces",
      .explanation =
          R"(14 CFR 23.683 asks for a test: with the limit pilot force on it, a control must be
free of jamming, excessive friction and excessive deflection, and gives no figures. Two are
judged here, as `rig` shows them. What the limit pull, the larger of the stated limit load and
the pilot's pull, stretches a cable by beyond its rigged stretch is held against its smaller
travel from neutral: the surface falls back by as much. What the airframe gives comes on top.
Friction is that of all cables of the control at their rigged tension, each felt through its
own lever ratio, which must be stated; hinges, seals and pedals are not in it. A control whose
figures are not all known is left to the rules that ask for them; asked for alone, this rule then
answers unknown. The test is still to be made.)",
      .mend = "Use stiffer cables, longer arms, and pulleys where cables turn.",
      .limits = limits,
      .catalogue_limits = "stretch of each cable: `linewright catalogue`",
      .judge = judge_control_feel,
      .lacking = control_feel_lacking};
  return rule;
}

}  // namespace linewright
