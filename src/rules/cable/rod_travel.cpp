#include <algorithm>

#include "lines/rod_way.hpp"
#include "rules/rule.hpp"
#include "rules/words/swung_end.hpp"

namespace linewright {

namespace {

constexpr LimitRow reaches{.name = "arm-reaches",
                           .subject = "the arm at `from` takes its end as far as the travel says",
                           .value = 1,
                           .unit = Unit::none,
                           .source = "geometry: an end goes round its arm",
                           .mark = Mark::calculated};
constexpr LimitRow over_centre{.name = "over-centre",
                               .subject = "either arm, off standing in line with the rod",
                               .value = 0,
                               .unit = Unit::degree,
                               .source = "geometry: a rod keeps its length",
                               .mark = Mark::calculated};
constexpr LimitRow lever{.name = "lever",
                         .subject = "either arm, off standing in line with the rod",
                         .value = 30,
                         .unit = Unit::degree,
                         .source = "nearer to dead centre the rod has little lever on its arm",
                         .mark = Mark::common_practice,
                         .broken = Verdict::warn};
constexpr LimitRow end_tilt{.name = "rod-end-angle",
                            .subject = "tilt of an end bearing, times what it is stated to take",
                            .value = 1,
                            .unit = Unit::degree,
                            .sense = LimitSense::at_most,
                            .source = "the route's rod_end_angle, as the builder states it",
                            .mark = Mark::builder,
                            .times = "rod_end_angle"};

constexpr auto rod_travel_limits = limit_table({reaches, over_centre, lever, end_tilt});

Judgement judge_unstated(const RuleContext& context, const PreparedRoute& route,
                         const RodWay& way) {
  Judgement judgement = context.at(route, 0);
  leave_unknown(judgement, over_centre);
  judgement.message = "where the rod goes is not known: " + way.missing + " is not stated";
  judgement.mend = "state the `arm` of both its nodes, horns or pedals, and the route's `travel`";
  return judgement;
}

Judgement judge_fault(const RuleContext& context, const PreparedRoute& route, const RodWay& way) {
  const bool short_arm = way.fault == RodFault::from_too_short;
  const Node& node = short_arm ? *route.from : *route.to;
  Judgement judgement = context.at(route, short_arm ? 0 : route.length_in());
  judgement.with = node.name;
  holds_true(judgement, false, short_arm ? reaches : over_centre);
  judgement.message = short_arm ? "the arm of " + node.name + " is too short: it gives " +
                                      shortfall_words(route, arm_gives(route), context.phrasing)
                                : "the arm of " + node.name +
                                      " cannot follow: it comes over centre within the travel";
  judgement.mend =
      "give it a longer arm or the other a shorter one, set it square to the rod, or "
      "state less `travel`";
  return judgement;
}

Judgement judge_lever(const RuleContext& context, const PreparedRoute& route, const RodWay& way) {
  double least = 90;
  for (const RodPlace& place : way.places)
    least = std::min(least, off_dead_centre_deg(route, place));
  Judgement judgement = context.at(route, 0);
  const bool wide = holds(judgement, least, {over_centre, lever});
  judgement.message = "the arms stand " + context.phrasing.angle(least) +
                      " or more off the line of the rod through its travel";
  if (wide) return judgement;
  judgement.message =
      "an arm comes within " + context.phrasing.angle(least) + " of standing in line with the rod";
  judgement.mend = "set the arms nearer to square to the rod at neutral, or make them longer";
  return judgement;
}

Judgement judge_tilt(const RuleContext& context, const PreparedRoute& route, const RodWay& way) {
  double most = 0;
  for (const RodPlace& place : way.places) most = std::max(most, end_tilt_deg(route, place));
  Judgement judgement = context.at(route, 0);
  const std::string tilt = "an end bearing tilts " + context.phrasing.angle(most);
  const std::optional<double>& stated = route.route->rod_end_angle_deg;
  if (!stated) {
    leave_unknown(judgement, end_tilt);
    judgement.value = most;
    judgement.message = tilt + "; how far it can is not known";
    judgement.mend = "state the route's `rod_end_angle`";
    return judgement;
  }
  if (holds(judgement, most, {end_tilt * *stated})) {
    judgement.message = tilt + " at the most";
    return judgement;
  }
  judgement.message = tilt + ", more than it can";
  judgement.mend =
      "bring the axes of the two arms nearer to square to the rod and to each other, "
      "or fit ends that tilt farther";
  return judgement;
}

std::vector<Judgement> judge_rod_travel(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes) {
    if (route.line->kind != LineKind::rod) continue;
    const RodWay& way = context.motion.rods[context.index_of(route)];
    if (way.fault == RodFault::unstated) {
      judgements.push_back(judge_unstated(context, route, way));
    } else if (way.fault != RodFault::none) {
      judgements.push_back(judge_fault(context, route, way));
    } else {
      judgements.push_back(judge_lever(context, route, way));
      judgements.push_back(judge_tilt(context, route, way));
    }
  }
  return judgements;
}

}  // namespace

const Rule& rod_travel_rule() {
  static const Rule rule{
      .name = "rod-travel",
      .purpose = "a pushrod's arms follow it through its travel, and its ends can tilt so far",
      .explanation =
          R"(A pushrod keeps its length, and its two ends go round the arms of its two nodes. Its `from` end
is taken as far along the drawn rod as `travel` says, to both sides; where the other end is
follows from the length of the rod. That there is such a place is shown for the whole of the
way: an arm that comes over centre fails. Without both arms, or without the travel, the answer is
unknown. The least angle of either arm off the line of the rod, along the way its end goes, is
held against common practice. An end bearing tilts where its bolt does not stay square to the
rod: bolts are taken to lie along the axes of the arms, bearings to be set to them at neutral,
and the rod to roll about itself so that both take a like share. How far a bearing can tilt is
its maker's figure, `rod_end_angle`. What the rod sweeps is judged by clearance, chafe and
separation. Not judged: what the rod bears before it bends, its vibration, and play.)",
      .mend = "Set the arms square to the rod at neutral, and their axes parallel.",
      .limits = rod_travel_limits,
      .catalogue_limits = "",
      .judge = judge_rod_travel};
  return rule;
}

}  // namespace linewright
