#include "lines/own_arm.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "lines/fitting_seat.hpp"

namespace linewright {

namespace {

/// Nearer to the end than this is the end itself.
constexpr double at_end_in = 1e-9;

/// The pieces of the chain that the node is on, or near enough to be fixed to.
std::vector<int> pieces_at(const Mover& mover, Vec3 at) {
  std::vector<int> pieces;
  const std::vector<Vec3>& points = mover.points;
  const std::size_t count = points.size() > 1 ? points.size() - 1 : points.size();
  for (std::size_t i = 0; i < count; ++i) {
    const Segment3 piece{points[i], points[std::min(i + 1, points.size() - 1)]};
    if (nearest(at, piece).distance_in - mover.radius_in <= mount_distance_in)
      pieces.push_back(static_cast<int>(i));
  }
  return pieces;
}

/// The larger turn of the sweep from where the mover is drawn. A rod counts at every place of its
/// own, so that for it the arm can be as far off as from one end of the sweep to the other.
double largest_turn_deg(const Mover& mover, LineKind kind) {
  if (kind == LineKind::rod) return std::abs(mover.sweep_to_deg - mover.sweep_from_deg);
  return std::max(std::abs(mover.sweep_from_deg), std::abs(mover.sweep_to_deg));
}

}  // namespace

double carried_in(const Mover& mover, Vec3 at, double turn_deg) {
  const double from_axis = norm(cross(unit(mover.axis), at - mover.pivot));
  const double turn_rad = radians_of(turn_deg);
  return 2 * from_axis * std::sin(std::min(turn_rad, std::numbers::pi) / 2);
}

bool turns_with(const Node& node, const Mover& mover) {
  if (!node.arm) return false;
  const Vec3 axis = unit(mover.axis);
  return norm(cross(axis, unit(node.arm->axis))) <= std::sin(same_axis_within_rad) &&
         norm(cross(axis, node.arm->pivot - mover.pivot)) <= same_axis_within_in;
}

bool is_on(const Mover& mover, Vec3 at) {
  return !pieces_at(mover, at).empty();
}

bool end_moves(const PreparedRoute& route, const Node& node) {
  if (!works_control(route.line->kind)) return false;
  const bool on_arm = node.arm || takes_cable(node.kind);
  return on_arm && !route.stays();
}

OwnArms::OwnArms(const PreparedProject& prepared, const PreparedRoute& route) {
  if (!works_control(route.line->kind)) return;
  for (const Mover& mover : prepared.project->structure.movers) {
    const std::optional<int> part = prepared.obstacles.find_part(mover.name);
    if (!part) continue;
    for (const Node* node : {route.from, route.to}) {
      if (!turns_with(*node, mover)) continue;
      arms_.push_back({*part, pieces_at(mover, node->at),
                       node == route.from ? 0 : route.length_in(),
                       carried_in(mover, node->at, largest_turn_deg(mover, route.line->kind)) +
                           mover.radius_in + fitting_zone_in});
    }
  }
}

bool OwnArms::pass_over(const Obstacle& obstacle, double distance_in) const {
  return std::any_of(arms_.begin(), arms_.end(), [&](const Arm& arm) {
    if (arm.part != obstacle.part || arm.pieces.empty()) return false;
    const double away = std::abs(distance_in - arm.end_in);
    const bool at_node =
        std::find(arm.pieces.begin(), arm.pieces.end(), obstacle.piece) != arm.pieces.end();
    return away <= at_end_in || (at_node && away <= arm.zone_in);
  });
}

}  // namespace linewright
