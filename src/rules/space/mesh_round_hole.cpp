#include "rules/space/mesh_round_hole.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "geometry/plane/polygon.hpp"

namespace linewright {

namespace {

/// Places are looked for to this.
constexpr double exactly_in = 0.001;

/// A way outward in the plane of a frame, from an edge to where it is looked no farther.
struct WayOut {
  const DrawnPlane& plane;
  double above_in = 0;  ///< off that plane
  Vec2 from;
  Vec2 outward;  ///< of unit length

  Segment3 to(double along_in) const {
    return {plane.in_space(from, above_in), plane.in_space(from + outward * along_in, above_in)};
  }
};

/// How far along the way the mesh begins; nothing where it is not met in the web.
std::optional<double> met_at_in(const MeshPartField& mesh, const Frame& frame, WayOut way,
                                double farthest_in) {
  const double swelling_in = mesh.field->mesh().thickness_in / 2;
  const double in_web_in = frame.thickness_in / 2 + same_web_in + swelling_in;
  const auto item = mesh.field->nearest_item(way.to(farthest_in), in_web_in);
  if (!item) return std::nullopt;
  const Obstacle obstacle = obstacle_of(mesh, *item);
  if (!lies_in_web(obstacle, frame)) return std::nullopt;
  // The mesh may draw one face of the sheet: go along there.
  way.above_in = frame.plane.above(nearest(way.to(farthest_in), obstacle).on_second);
  const double touching_in = swelling_in + exactly_in;
  if (!mesh.field->nearest_item(way.to(farthest_in), touching_in)) return std::nullopt;
  double open_in = 0;
  double met_in = farthest_in;
  if (mesh.field->nearest_item(way.to(0), touching_in)) return 0.0;
  while (met_in - open_in > exactly_in) {
    const double middle = (open_in + met_in) / 2;
    (mesh.field->nearest_item(way.to(middle), touching_in) ? met_in : open_in) = middle;
  }
  return met_in;
}

Vec2 middle_of_edge(const std::vector<Vec2>& edge) {
  Vec2 sum;
  for (const Vec2 corner : edge) sum = sum + corner;
  return sum * (1.0 / static_cast<double>(edge.size()));
}

/// Where a way from inside the hole leaves it, by its farthest crossing of the edge.
double edge_along(const std::vector<Vec2>& edge, Vec2 middle, Vec2 outward) {
  double along = 0;
  for (std::size_t i = 0; i < edge.size(); ++i) {
    const Vec2 a = edge[i] - middle;
    const Vec2 side = edge[(i + 1) % edge.size()] - edge[i];
    const double across = cross(outward, side);
    if (across == 0) continue;
    const double share = cross(a, outward) / across;
    if (share >= 0 && share <= 1) along = std::max(along, cross(a, side) / across);
  }
  return along;
}

}  // namespace

std::optional<double> left_open_in(const MeshPartField& mesh, const Crossing& crossing) {
  const std::vector<Vec2> edge = edge_polygon(*crossing.hole, exactly_in / 2);
  const Vec2 middle = middle_of_edge(edge);
  double size_in = 0;
  for (const Vec2 corner : edge) size_in = std::max(size_in, distance(middle, corner));
  double widest_in = 0;
  for (int i = 0; i < directions_round_hole; ++i) {
    const double angle = 2 * std::numbers::pi * i / directions_round_hole;
    const Vec2 outward{std::cos(angle), std::sin(angle)};
    const Vec2 from = middle + outward * edge_along(edge, middle, outward);
    const auto met =
        met_at_in(mesh, *crossing.frame, {crossing.frame->plane, 0, from, outward}, 2 * size_in);
    if (!met) return std::nullopt;
    widest_in = std::max(widest_in, *met);
  }
  return widest_in;
}

}  // namespace linewright
