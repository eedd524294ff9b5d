#include "lines/own_arm.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "lines/fitting_seat.hpp"

namespace linewright {

namespace {

/// Nearer to the end than this is the end itself.
constexpr double at_end_in = 1e-9;

/// From the place to each piece's surface; below zero where the place is in it.
std::vector<double> to_pieces_in(const Mover& mover, Vec3 at) {
  std::vector<double> distances_in;
  const std::vector<Vec3>& points = mover.points;
  const std::size_t count = points.size() > 1 ? points.size() - 1 : points.size();
  for (std::size_t i = 0; i < count; ++i) {
    const Segment3 piece{points[i], points[std::min(i + 1, points.size() - 1)]};
    distances_in.push_back(nearest(at, piece).distance_in - mover.radius_in);
  }
  return distances_in;
}

double least_of(const std::vector<double>& distances_in) {
  return distances_in.empty() ? std::numeric_limits<double>::infinity()
                              : *std::min_element(distances_in.begin(), distances_in.end());
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

bool turns_with(const Arm& arm, const Mover& mover) {
  const Vec3 axis = unit(mover.axis);
  return norm(cross(axis, unit(arm.axis))) <= std::sin(same_axis_within_rad) &&
         norm(cross(axis, arm.pivot - mover.pivot)) <= same_axis_within_in;
}

std::vector<OwnPieces> pieces_fixed_to(const PreparedProject& prepared, const Arm& arm, Vec3 end) {
  std::vector<OwnPieces> found;
  std::vector<double> found_in;
  double least_in = mount_distance_in;
  for (const Mover& mover : prepared.project->structure.movers) {
    const std::optional<int> part = prepared.obstacles.find_part(mover.name);
    if (!part || !turns_with(arm, mover)) continue;
    const std::vector<double> distances_in = to_pieces_in(mover, end);
    OwnPieces own{&mover, *part, {}};
    for (std::size_t i = 0; i < distances_in.size(); ++i)
      if (distances_in[i] <= mount_distance_in) own.pieces.push_back(static_cast<int>(i));
    if (own.pieces.empty()) continue;
    found_in.push_back(least_of(distances_in));
    least_in = std::min(least_in, found_in.back());
    found.push_back(std::move(own));
  }
  std::vector<OwnPieces> nearest;
  for (std::size_t i = 0; i < found.size(); ++i)
    if (found_in[i] <= least_in + beside_own_in) nearest.push_back(std::move(found[i]));
  return nearest;
}

bool is_on(const Mover& mover, Vec3 at) {
  return least_of(to_pieces_in(mover, at)) <= mount_distance_in;
}

bool end_moves(const PreparedRoute& route, const Node& node) {
  if (!works_control(route.line->kind)) return false;
  const bool on_arm = node.arm || takes_cable(node.kind);
  return on_arm && !route.stays();
}

bool swing_is_unknown(const PreparedRoute& route, const Node& node) {
  return node.held() && end_moves(route, node) && (!node.arm || !route.moves);
}

OwnArms::OwnArms(const PreparedProject& prepared, const PreparedRoute& route) {
  if (!works_control(route.line->kind)) return;
  for (const Node* node : {route.from, route.to}) {
    if (!node->arm) continue;
    for (OwnPieces& own : pieces_fixed_to(prepared, *node->arm, node->at)) {
      const Mover& mover = *own.mover;
      arms_.push_back({own.part, std::move(own.pieces), node == route.from ? 0 : route.length_in(),
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
