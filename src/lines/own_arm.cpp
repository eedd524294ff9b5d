#include "lines/own_arm.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "geometry/structure/mover_sweep.hpp"
#include "lines/fitting_seat.hpp"

namespace linewright {

namespace {

/// Nearer to the end than this is the end itself.
constexpr double at_end_in = 1e-9;

/// Where the sweep takes the place, from one end to the other.
std::vector<Vec3> places_of(const Mover& mover, Vec3 at) {
  std::vector<Vec3> places;
  constexpr int steps = 40;
  for (int i = 0; i <= steps; ++i) {
    const double degrees =
        mover.sweep_from_deg + (mover.sweep_to_deg - mover.sweep_from_deg) * i / steps;
    places.push_back(turned(at, mover.pivot, mover.axis, degrees * std::numbers::pi / 180));
  }
  return places;
}

/// How far the sweep carries a place from where it is drawn, at the most.
double carried_in(const Mover& mover, Vec3 at) {
  const double from_axis = norm(cross(unit(mover.axis), at - mover.pivot));
  const double turn_rad = std::max(std::abs(mover.sweep_from_deg), std::abs(mover.sweep_to_deg)) *
                          std::numbers::pi / 180;
  return 2 * from_axis * std::sin(std::min(turn_rad, std::numbers::pi) / 2);
}

}  // namespace

bool turns_with(const Node& node, const Mover& mover) {
  if (!node.arm) return false;
  const Vec3 axis = unit(mover.axis);
  return norm(cross(axis, unit(node.arm->axis))) <= std::sin(same_axis_within_rad) &&
         norm(cross(axis, node.arm->pivot - mover.pivot)) <= same_axis_within_in;
}

bool is_on(const Mover& mover, Vec3 at) {
  const std::vector<Vec3>& points = mover.points;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const Segment3 piece{points[i], points[std::min(i + 1, points.size() - 1)]};
    if (nearest(at, piece).distance_in - mover.radius_in <= mount_distance_in) return true;
  }
  return false;
}

bool end_moves(const PreparedRoute& route, const Node& node) {
  if (route.line->kind != LineKind::cable) return false;
  const bool still =
      route.moves && route.moves->toward_from_in <= 0 && route.moves->toward_to_in <= 0;
  const bool on_arm = node.arm || node.kind == NodeKind::horn || node.kind == NodeKind::pedal;
  return on_arm && !still;
}

OwnArms::OwnArms(const PreparedProject& prepared, const PreparedRoute& route) {
  if (route.line->kind != LineKind::cable) return;
  for (const Mover& mover : prepared.project->structure.movers) {
    const std::optional<int> part = prepared.obstacles.find_part(mover.name);
    if (!part) continue;
    for (const Node* node : {route.from, route.to}) {
      if (!turns_with(*node, mover) || !is_on(mover, node->at)) continue;
      arms_.push_back({*part, places_of(mover, node->at),
                       node == route.from ? 0 : route.length_in(),
                       carried_in(mover, node->at) + mover.radius_in + fitting_zone_in});
    }
  }
}

bool OwnArms::pass_over(const Obstacle& obstacle, double distance_in) const {
  return std::any_of(arms_.begin(), arms_.end(), [&](const Arm& arm) {
    if (arm.part != obstacle.part) return false;
    const double away = std::abs(distance_in - arm.end_in);
    const auto is_there = [&](Vec3 place) {
      return nearest(place, obstacle).distance_in <= mount_distance_in;
    };
    return away <= at_end_in ||
           (away <= arm.zone_in && std::any_of(arm.places.begin(), arm.places.end(), is_there));
  });
}

}  // namespace linewright
