#include "rules/line/arm_sweep.hpp"

#include <algorithm>
#include <cmath>

#include "lines/arm_swing.hpp"
#include "lines/own_arm.hpp"
#include "lines/rod_way.hpp"
#include "model/angle.hpp"

namespace linewright {

namespace {

/// nullptr where none turns with the arm, or several do and none is drawn there.
const Mover* mover_of(const Structure& structure, const Node& node) {
  const Mover* found = nullptr;
  int turning = 0;
  for (const Mover& mover : structure.movers) {
    if (!node.arm || !turns_with(*node.arm, mover)) continue;
    if (is_on(mover, node.at)) return &mover;
    found = &mover;
    ++turning;
  }
  return turning == 1 ? found : nullptr;
}

double turned_deg(const Mover& mover, Vec3 from, Vec3 to) {
  const Vec3 axis = unit(mover.axis);
  const auto off_axis = [&](Vec3 at) {
    const Vec3 arm = at - mover.pivot;
    return arm - axis * dot(arm, axis);
  };
  const Vec3 a = off_axis(from);
  const Vec3 b = off_axis(to);
  return std::atan2(dot(cross(a, b), axis), dot(a, b)) * degrees_per_radian;
}

/// Where the end goes that the arm carries; none where that is not known, or an arm falls short.
std::vector<Vec3> places_of_end(const PreparedRoute& route, RouteEnd end) {
  std::vector<Vec3> places;
  if (route.line->kind == LineKind::rod) {
    const RodWay way = rod_way(route);
    if (way.fault != RodFault::none) return places;
    for (const RodPlace& place : way.places)
      places.push_back(end == RouteEnd::from ? place.from : place.to);
    return places;
  }
  const auto swing = arm_swing(route, end);
  if (swing && swing->reaches) places = {swing->toward_from, swing->toward_to};
  return places;
}

}  // namespace

std::vector<Judgement> judge_arm_sweeps(const RuleContext& context, const PreparedRoute& route) {
  std::vector<Judgement> judgements;
  for (const RouteEnd end : {RouteEnd::from, RouteEnd::to}) {
    const std::vector<Vec3> places = places_of_end(route, end);
    if (places.empty()) continue;
    const bool at_start = end == RouteEnd::from;
    const Node& node = at_start ? *route.from : *route.to;
    const Mover* mover = mover_of(context.prepared.project->structure, node);
    if (!mover) continue;
    double beyond_deg = 0;
    double turn_deg = 0;
    for (const Vec3 place : places) {
      const double turned = turned_deg(*mover, node.at, place);
      const double beyond = std::max(turned - mover->sweep_to_deg, mover->sweep_from_deg - turned);
      if (beyond <= beyond_deg) continue;
      beyond_deg = beyond;
      turn_deg = std::abs(turned);
    }
    Judgement judgement = context.at(route, at_start ? 0 : route.length_in());
    judgement.location = at_start ? route.route->from_where : route.route->to_where;
    judgement.with = mover->name;
    if (holds(judgement, beyond_deg, {arm_sweep})) continue;
    const std::string line = route.line->kind == LineKind::rod ? "rod" : "cable";
    judgement.message = "the " + line + "'s travel turns the arm at " + node.name + " by " +
                        context.phrasing.angle(turn_deg) + ", " +
                        context.phrasing.angle(beyond_deg) + " beyond the sweep of " + mover->name +
                        ": what that strikes there is not judged";
    judgement.mend =
        "state the whole sweep of " + mover->name + ", or the travel that it gives the " + line;
    judgements.push_back(judgement);
  }
  return judgements;
}

}  // namespace linewright
