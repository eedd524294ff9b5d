#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "lines/cable_friction.hpp"
#include "physics/pilot_force.hpp"
#include "rules/cable/control_pair.hpp"
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

constexpr auto control_feel_limits =
    limit_table({travel_lost, frictions[0], frictions[1], frictions[2], control_moves,
                 travels_apart, tensions_apart, pulled_back, turned_alike});

const LimitRow& friction_row_of(const std::string& control) {
  std::size_t row = 0;
  while (!is_same_control(pilot_forces[row].control, control)) ++row;
  return frictions[row];
}

/// What keeps a figure from being known, and where in the project it would be stated.
struct Lacking {
  std::string what;
  std::string mend;
};

Lacking tension_of(const Route& route) {
  return {"the rigged tension of " + route.name, "state the route's tension.rigged"};
}

std::string limit_load_of(const Route& route) {
  return "the limit load of " + route.name;
}

std::string lever_ratio_of(const Route& route) {
  return "the lever ratio of " + route.name;
}

std::string guide_of(const std::string& missing, const Route& route) {
  return missing + ", of " + route.name + ",";
}

std::optional<Lacking> lacks_for_stretch(const PreparedRoute& route) {
  const Route& stated = *route.route;
  if (!stated.tension) return tension_of(stated);
  if (!limit_pull_lbf(stated))
    return Lacking{limit_load_of(stated),
                   "state the route's tension.limit_load, or its lever_ratio"};
  if (!route.line->axial_stiffness_lbf)
    return Lacking{"the stretch of " + route.line->name,
                   "give the line an axial_stiffness in the project's lines"};
  return std::nullopt;
}

Judgement not_known(Judgement judgement, const LimitRow& row, const std::string& words,
                    const Lacking& lacking) {
  leave_unknown(judgement, row);
  judgement.message = words + " is not known: " + lacking.what + " is missing";
  judgement.mend = lacking.mend;
  return judgement;
}

/// The smaller of the ways that the cable goes from neutral at all; 0 where it goes none.
double smaller_travel_in(const Travel& travel) {
  const double smaller = std::min(travel.forward_in, travel.aft_in);
  return smaller > 0 ? smaller : std::max(travel.forward_in, travel.aft_in);
}

std::optional<Judgement> judge_stretch(const RuleContext& context, const PreparedRoute& route) {
  const Route& stated = *route.route;
  if (!stated.travel) return std::nullopt;
  const double travel = smaller_travel_in(*stated.travel);
  if (travel <= 0) return std::nullopt;
  Judgement judgement = context.at(route, route.length_in() / 2);
  judgement.location = stated.travel->where;
  const CableState& state = context.motion.cables[context.index_of(route)];
  const std::optional<double> lost = travel_lost_in(route, state);
  if (!lost) {
    const auto lacking = lacks_for_stretch(route);
    return lacking ? std::optional(not_known(judgement, travel_lost,
                                             "what stretch takes from its travel", *lacking))
                   : std::nullopt;
  }
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

/// All cables of the route's control, itself among them, in the project's order.
std::vector<const PreparedRoute*> cables_of_control(const RuleContext& context,
                                                    const PreparedRoute& route) {
  std::vector<const PreparedRoute*> cables;
  for (const PreparedRoute& each : context.prepared.routes)
    if (&each == &route || work_together(route, each)) cables.push_back(&each);
  return cables;
}

std::optional<Lacking> lacks_for_friction(const PreparedRoute& route) {
  const Route& stated = *route.route;
  if (!stated.lever) return Lacking{lever_ratio_of(stated), "state its lever_ratio"};
  if (!stated.tension) return tension_of(stated);
  const CableFriction friction = cable_friction(route);
  if (friction.missing.empty()) return std::nullopt;
  return Lacking{guide_of(friction.missing.front(), stated),
                 "lead the cable through a guide that it slides in, and say which"};
}

/// Friction of the cable at its rigged tension, felt through its lever.
double felt_lbf(const PreparedRoute& route) {
  const Route& stated = *route.route;
  return cable_friction(route).to_move_lbf(stated.tension->rigged_lbf) / stated.lever->ratio;
}

/// Of all cables of the control, which move at once. Said of the first of them. What none states a
/// lever ratio for is said with what was taken (planning/taken_values.hpp).
std::optional<Judgement> judge_friction(const RuleContext& context, const PreparedRoute& route) {
  const PilotForce* force = pilot_forces_on(*route.route);
  if (!force || !route.route->is_primary_control()) return std::nullopt;
  const std::vector<const PreparedRoute*> cables = cables_of_control(context, route);
  const auto lever = std::find_if(cables.begin(), cables.end(), [](const PreparedRoute* each) {
    return each->route->lever.has_value();
  });
  if (cables.front() != &route || lever == cables.end()) return std::nullopt;
  const LimitRow& row = friction_row_of(route.route->control);
  Judgement judgement = context.at(route, route.length_in() / 2);
  judgement.location = (*lever)->route->lever->where;
  double sum = 0;
  for (const PreparedRoute* each : cables) {
    if (const auto lacking = lacks_for_friction(*each))
      return not_known(judgement, row, "the friction of all cables of " + route.route->control,
                       *lacking);
    sum += felt_lbf(*each);
  }
  const bool held = holds(judgement, sum, {row});
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
  for (Judgement& judgement : judge_control_pairs(context))
    judgements.push_back(std::move(judgement));
  return judgements;
}

/// What of a control cable is not stated, without which its stretch and friction are not judged,
/// but for what the judgements say is missing.
std::string unstated_words(const PreparedRoute& route, const std::vector<Judgement>& judged) {
  const Route& stated = *route.route;
  std::string words;
  const auto add = [&](bool lacks, const std::string& what, const std::string& said_as) {
    const bool said = std::any_of(judged.begin(), judged.end(), [&](const Judgement& each) {
      return each.verdict == Verdict::unknown &&
             each.message.find(said_as + " is missing") != std::string::npos;
    });
    if (lacks && !said) words += (words.empty() ? "" : ", ") + what;
  };
  const std::string stretch = "the stretch of " + route.line->name;
  add(!stated.tension, "its rigged tension", tension_of(stated).what);
  add(!limit_pull_lbf(stated), "its limit load", limit_load_of(stated));
  add(!stated.travel, "its travel", "its travel");
  add(!stated.lever, "its lever ratio", lever_ratio_of(stated));
  add(!route.line->axial_stiffness_lbf, stretch, stretch);
  for (const std::string& guide : cable_friction(route).missing)
    add(true, guide, guide_of(guide, stated));
  return words;
}

std::vector<Judgement> control_feel_lacking(const RuleContext& context) {
  std::vector<Judgement> judgements;
  const std::vector<Judgement> judged = judge_control_feel(context);
  for (const PreparedRoute& route : context.prepared.routes) {
    if (!route.route->is_primary_control()) continue;
    const std::string unstated = unstated_words(route, judged);
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
travel from neutral (one of none is no travel): the surface falls back by as much. What the airframe gives comes on top.
Friction is that of all cables of the control at their rigged tension, each felt through its
own lever ratio; hinges, seals and pedals are not in it. Where a figure for one of them is
missing the answer is unknown; without a travel, and where no cable of a control states a lever
ratio, that one is not judged, unless this rule is asked for alone. The test is still to be made.

A cable or rod that names a control, or ends on a horn or pedal, and states a travel of none is asked
about, and so is a push-pull control; where another cable of that control moves, the answer is
unknown. Two cables of a control that pull the shaft that both have a horn on the same way, and that
nothing pulls back, fail, and so does a rod that turns a shaft against another line between the same
two. Two cables of a control with arms on one shaft must turn it
alike, travel over arm, and hold it still between them, rigged tension times arm, within a
quarter. Where both end on horns of one shaft they must turn it as far to either side, and so must
a rod of that control, or of none: where what is stated does not fit, the answer is unknown.)",
      .mend = "Use stiffer cables, longer arms, and pulleys where cables turn.",
      .limits = control_feel_limits,
      .catalogue_limits = "stretch of each cable: `linewright catalogue`",
      .judge = judge_control_feel,
      .lacking = control_feel_lacking};
  return rule;
}

}  // namespace linewright
