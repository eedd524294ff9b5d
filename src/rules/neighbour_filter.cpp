#include "rules/neighbour_filter.hpp"

#include <algorithm>
#include <cmath>

namespace linewright {

namespace {

std::set<int> parts_at(const Obstacles& obstacles, const Node& node) {
  std::set<int> parts;
  if (!node.held()) return parts;
  const Vec3 at = node.at;
  const double by = mount_distance_in;
  const Bounds around{{at.x - by, at.y - by, at.z - by}, {at.x + by, at.y + by, at.z + by}};
  obstacles.visit(around, [&](const Obstacle& obstacle) {
    if (nearest(at, obstacle).distance_in <= mount_distance_in) parts.insert(obstacle.part);
  });
  return parts;
}

}  // namespace

bool hole_is_guarded(const PreparedRoute& route, const Hole& hole) {
  if (guards(hole.edge)) return true;
  const auto& points = route.route->points;
  return std::any_of(points.begin(), points.end(), [&](const RoutePoint& point) {
    return point.through == hole.name && point.hold && *point.hold != HoldKind::clamp;
  });
}

NeighbourFilter::NeighbourFilter(const PreparedProject& prepared, const PreparedRoute& route)
    : prepared_(prepared),
      route_(route),
      parts_at_from_(parts_at(prepared.obstacles, *route.from)),
      parts_at_to_(parts_at(prepared.obstacles, *route.to)) {}

bool NeighbourFilter::counts(const Obstacle& obstacle, double distance_in) const {
  const bool moves = prepared_.obstacles.parts()[static_cast<std::size_t>(obstacle.part)].moves;
  const double zone = moves ? route_.length_in() : fitting_zone_in;
  if (distance_in <= zone && parts_at_from_.contains(obstacle.part)) return false;
  return distance_in < route_.length_in() - zone || !parts_at_to_.contains(obstacle.part);
}

bool NeighbourFilter::crossing_near(const Obstacle& obstacle, double distance_in) const {
  const Part& part = prepared_.obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
  return part.kind == PartKind::frame &&
         std::any_of(route_.crossings.begin(), route_.crossings.end(), [&](const Crossing& each) {
           return each.frame->name == part.name &&
                  std::abs(each.distance_in - distance_in) <= crossing_zone_in;
         });
}

bool NeighbourFilter::guarded_crossing_near(const Obstacle& obstacle, double distance_in) const {
  const Part& part = prepared_.obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
  return part.kind == PartKind::frame &&
         std::any_of(route_.crossings.begin(), route_.crossings.end(), [&](const Crossing& each) {
           return each.frame->name == part.name && each.hole &&
                  hole_is_guarded(route_, *each.hole) &&
                  std::abs(each.distance_in - distance_in) <= crossing_zone_in;
         });
}

}  // namespace linewright
