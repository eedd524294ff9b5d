#include "lines/neighbour_filter.hpp"

#include <algorithm>
#include <cmath>

namespace linewright {

bool lies_in_web(const Obstacle& obstacle, const Frame& frame) {
  const auto& [a, b, c] = obstacle.shape;
  const double near = frame.thickness_in / 2 + same_web_in;
  return std::max({std::abs(a.x - frame.station_in), std::abs(b.x - frame.station_in),
                   std::abs(c.x - frame.station_in)}) <= near;
}

bool is_guarded(const PreparedRoute& route, const Crossing& crossing) {
  if (guards(crossing.hole->edge)) return true;
  const auto& points = route.route->points;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const bool guide =
        points[i].hold && *points[i].hold != HoldKind::clamp && *points[i].hold != HoldKind::pulley;
    if (guide && points[i].through == crossing.hole->name &&
        std::abs(route.point_distance_in[i] - crossing.distance_in) <= point_at_hole_in + 1e-6)
      return true;
  }
  return std::any_of(
      route.free_passages.begin(), route.free_passages.end(), [&](const FreePassage& passage) {
        return passage.fairlead().through == crossing.hole->name &&
               std::abs(passage.distance_in - crossing.distance_in) <= point_at_hole_in + 1e-6;
      });
}

NeighbourFilter::NeighbourFilter(const PreparedProject& prepared, const PreparedRoute& route)
    : prepared_(prepared),
      route_(route),
      own_arms_(prepared, route),
      mounts_at_from_(mounts_of(*route.from)),
      mounts_at_to_(mounts_of(*route.to)) {}

NeighbourFilter::Mounts NeighbourFilter::mounts_of(const Node& node) const {
  Mounts mounts;
  if (!node.held() || end_moves(route_, node)) return mounts;
  const Vec3 by{mount_distance_in, mount_distance_in, mount_distance_in};
  prepared_.obstacles.visit({node.at - by, node.at + by}, [&](const Obstacle& obstacle) {
    const double away = nearest(node.at, obstacle).distance_in;
    if (away > mount_distance_in) return;
    const Part& part = prepared_.obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
    if (part.moves) return;
    const auto known = mounts.emplace(obstacle.part, Mount{away, fitting_zone_in}).first;
    known->second.node_distance_in = std::min(known->second.node_distance_in, away);
  });
  for (const MeshPartField& mesh : prepared_.obstacles.meshes()) {
    const double swelling = mesh.field->mesh().thickness_in / 2;
    const auto item = mesh.field->nearest_item({node.at, node.at}, mount_distance_in + swelling);
    if (!item) continue;
    const double away = nearest(node.at, obstacle_of(mesh, *item)).distance_in;
    mounts.emplace(mesh.part, Mount{away, fitting_zone_in});
  }
  return mounts;
}

bool NeighbourFilter::exempt(const Mounts& mounts, const Node& node, const Obstacle& obstacle,
                             double distance_in, double from_end_in) const {
  const auto mount = mounts.find(obstacle.part);
  if (mount == mounts.end() || from_end_in > mount->second.zone_in) return false;
  const Part& part = prepared_.obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
  if (part.kind == PartKind::mesh && nearest(node.at, obstacle).distance_in > mount_distance_in)
    return false;
  const double away = nearest(route_.centreline.at(distance_in), obstacle).distance_in;
  return away >= mount->second.node_distance_in - 1e-6;
}

bool NeighbourFilter::counts(const Obstacle& obstacle, double distance_in) const {
  const RoutePulley* pulley = prepared_.pulley_of(obstacle.part);
  if (pulley) return !runs_on(*pulley, prepared_.pulleys, route_, distance_in);
  return !own_arms_.pass_over(obstacle, distance_in) &&
         !exempt(mounts_at_from_, *route_.from, obstacle, distance_in, distance_in) &&
         !exempt(mounts_at_to_, *route_.to, obstacle, distance_in,
                 route_.length_in() - distance_in);
}

template <typename Counts>
bool NeighbourFilter::any_crossing_near(const Obstacle& obstacle, double distance_in,
                                        const Counts& counts) const {
  const Part& part = prepared_.obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
  const auto is_of = [&](const Frame& frame) {
    if (part.kind == PartKind::mesh) return lies_in_web(obstacle, frame);
    return part.kind == PartKind::frame && frame.name == part.name;
  };
  return (part.kind == PartKind::frame || part.kind == PartKind::mesh) &&
         std::any_of(route_.crossings.begin(), route_.crossings.end(), [&](const Crossing& each) {
           return is_of(*each.frame) && counts(each) &&
                  std::abs(each.distance_in - distance_in) <= crossing_zone_in;
         });
}

bool NeighbourFilter::crossing_near(const Obstacle& obstacle, double distance_in) const {
  return any_crossing_near(obstacle, distance_in, [](const Crossing&) { return true; });
}

bool NeighbourFilter::guarded_crossing_near(const Obstacle& obstacle, double distance_in) const {
  return any_crossing_near(obstacle, distance_in, [this](const Crossing& crossing) {
    return crossing.hole && is_guarded(route_, crossing);
  });
}

bool NeighbourFilter::web_crossing_near(const Obstacle& obstacle, double distance_in) const {
  const Part& part = prepared_.obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
  return any_crossing_near(obstacle, distance_in, [&part](const Crossing& crossing) {
    return part.kind == PartKind::mesh || !crossing.hole;
  });
}

}  // namespace linewright
