#include "lines/arm_swing.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "lines/arm_circle.hpp"
#include "lines/cable_travel.hpp"

namespace linewright {

namespace {

/// The end's way is looked at in so many steps.
constexpr int steps = 64;
/// And no more places than this are given of it.
constexpr int most_places = 1000;
/// The nearest that the end comes to `start`, and the farthest.
std::array<double, 2> leg_lengths_in(const ArmCircle& circle, Vec3 start) {
  const Vec3 g = start - circle.centre;
  const double swing = 2 * circle.radius_in * std::hypot(dot(g, circle.u), dot(g, circle.v));
  const double level = circle.radius_in * circle.radius_in + dot(g, g);
  return {std::sqrt(std::max(0.0, level - swing)), std::sqrt(level + swing)};
}

double off_line_in(Vec3 at, Vec3 start, Vec3 direction) {
  return norm(cross(at - start, direction));
}

Vec3 leg_start(const PreparedRoute& route, RouteEnd end, int guide) {
  if (guide < 0) return end == RouteEnd::to ? route.from->at : route.to->at;
  for (const Bend& bend : route.centreline.bends())
    if (bend.corner == guide + 1)
      return route.centreline.at(end == RouteEnd::to ? bend.end_in : bend.start_in);
  return route.centreline.corners()[static_cast<std::size_t>(guide) + 1].at;
}

}  // namespace

int end_guide(const PreparedRoute& route, RouteEnd end) {
  int found = -1;
  for (const auto* guides : {&route.supports, &route.loose_guides})
    for (const Support& guide : *guides) {
      if (guide.point < 0) continue;
      const bool nearer = end == RouteEnd::to ? guide.point > found : guide.point < found;
      if (found < 0 || nearer) found = guide.point;
    }
  return found;
}

namespace {

/// What the arm does over the travel.
struct Turning {
  ArmCircle circle;
  double first_rad = 0;  ///< with the cable all the way toward the route's `from`
  double last_rad = 0;
};

struct SwungArm {
  ArmSwing swing;
  Turning turning;
};

std::optional<SwungArm> swung_arm(const PreparedRoute& route, RouteEnd end) {
  const Node& node = end == RouteEnd::to ? *route.to : *route.from;
  if (route.line->kind != LineKind::cable || !node.arm || !route.moves) return std::nullopt;
  const Movement moves = *route.moves;
  ArmSwing swing;
  swing.guide = end_guide(route, end);
  swing.start = leg_start(route, end, swing.guide);
  const ArmCircle circle = circle_of(*node.arm, node.at);
  const double drawn = distance(swing.start, node.at);
  if (drawn <= 0 || circle.radius_in <= 0) return std::nullopt;
  const double sign = end == RouteEnd::to ? 1 : -1;
  const auto [shortest, longest] = leg_lengths_in(circle, swing.start);
  swing.gives_toward_from_in = end == RouteEnd::to ? drawn - shortest : longest - drawn;
  swing.gives_toward_to_in = end == RouteEnd::to ? longest - drawn : drawn - shortest;
  const double first =
      angle_at(circle, swing.start, drawn - sign * moves.toward_from_in, swing.reaches);
  const double last =
      angle_at(circle, swing.start, drawn + sign * moves.toward_to_in, swing.reaches);
  return SwungArm{swing, {circle, first, last}};
}

/// Between two places a step apart the way bulges from their chord by no more than r Δφ² / 8.
double bulge_in(const Turning& turning, int count) {
  const double step_rad = (turning.last_rad - turning.first_rad) / count;
  return turning.circle.radius_in * step_rad * step_rad / 8;
}

Vec3 place_of(const Turning& turning, int step, int count) {
  return turning.circle.at(
      std::lerp(turning.first_rad, turning.last_rad, step / static_cast<double>(count)));
}

}  // namespace

std::optional<ArmSwing> arm_swing(const PreparedRoute& route, RouteEnd end) {
  std::optional<SwungArm> arm = swung_arm(route, end);
  if (!arm) return std::nullopt;
  ArmSwing& swing = arm->swing;
  const Vec3 drawn = end == RouteEnd::to ? route.to->at : route.from->at;
  swing.toward_from = arm->turning.circle.at(arm->turning.first_rad);
  swing.toward_to = arm->turning.circle.at(arm->turning.last_rad);
  const Vec3 leg = unit(drawn - swing.start);
  for (int step = 0; step <= steps; ++step) {
    const Vec3 place = place_of(arm->turning, step, steps);
    swing.sideways_in = std::max(swing.sideways_in, off_line_in(place, swing.start, leg));
    swing.inward_in = std::max(swing.inward_in, dot(drawn - place, leg));
  }
  swing.sideways_in += bulge_in(arm->turning, steps);
  swing.inward_in += bulge_in(arm->turning, steps);
  return swing;
}

std::optional<EndWay> end_way(const PreparedRoute& route, RouteEnd end, double apart_in) {
  const std::optional<SwungArm> arm = swung_arm(route, end);
  if (!arm) return std::nullopt;
  const double way_in =
      arm->turning.circle.radius_in * std::abs(arm->turning.last_rad - arm->turning.first_rad);
  if (way_in <= 0) return std::nullopt;
  const int count = std::clamp(static_cast<int>(std::ceil(way_in / apart_in)), 1, most_places);
  EndWay way{arm->swing.start, {}, way_in / count / 2};
  for (int step = 0; step <= count; ++step)
    way.places.push_back(place_of(arm->turning, step, count));
  return way;
}

std::vector<LegDirections> leg_directions(const PreparedRoute& route, int point) {
  const auto& corners = route.centreline.corners();
  const auto index = static_cast<std::size_t>(point);
  const LegDirections drawn{unit(corners[index + 1].at - corners[index].at),
                            unit(corners[index + 2].at - corners[index + 1].at)};
  auto first = arm_swing(route, RouteEnd::from);
  auto last = arm_swing(route, RouteEnd::to);
  const auto swings = [&](const ArmSwing& arm) { return arm.guide == point && arm.reaches; };
  if (first && !swings(*first)) first.reset();
  if (last && !swings(*last)) last.reset();
  if (!first && !last) return {drawn};
  LegDirections toward_from = drawn;
  LegDirections toward_to = drawn;
  if (first) {
    toward_from.before = unit(first->start - first->toward_from);
    toward_to.before = unit(first->start - first->toward_to);
  }
  if (last) {
    toward_from.after = unit(last->toward_from - last->start);
    toward_to.after = unit(last->toward_to - last->start);
  }
  return {drawn, toward_from, toward_to};
}

}  // namespace linewright
