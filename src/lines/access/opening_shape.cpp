#include "lines/access/opening_shape.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "geometry/plane/polygon.hpp"

namespace linewright {

namespace {

constexpr int circle_corners = 48;

/// Its second coordinate is up; fore and aft where the opening faces up or down.
DrawnPlane plane_of(Vec3 centre, Vec3 normal) {
  constexpr double faces_up = 0.9;
  const bool level = std::abs(normal.z) > faces_up;
  return plane_through(centre, normal, level ? Vec3{1, 0, 0} : Vec3{0, 0, 1});
}

Vec3 outline_normal(const std::vector<Vec3>& outline) {
  Vec3 sum;
  for (std::size_t i = 0; i < outline.size(); ++i)
    sum = sum +
          cross(outline[i] - outline.front(), outline[(i + 1) % outline.size()] - outline.front());
  return unit(sum);
}

Vec3 normal_of_wall(Vec3 centre, const PreparedProject& prepared) {
  for (const Frame& frame : prepared.project->structure.frames)
    if (std::abs(frame.plane.above(centre)) <= opening_depth_in &&
        covers(frame.outline, frame.plane.seen(centre)))
      return frame.plane.normal;
  Vec3 normal{1, 0, 0};
  double least_in = opening_depth_in;
  const Bounds about = grown(Bounds{centre, centre}, opening_depth_in);
  prepared.obstacles.visit(about, [&](const Obstacle& obstacle) {
    if (obstacle.is_segment || obstacle.is_slab || obstacle.is_disc) return;
    const double distance_in = nearest(centre, obstacle).distance_in;
    const Vec3 across =
        cross(obstacle.shape.b - obstacle.shape.a, obstacle.shape.c - obstacle.shape.a);
    if (distance_in >= least_in || norm(across) <= 0) return;
    least_in = distance_in;
    normal = unit(across);
  });
  return normal;
}

std::vector<Vec3> circle(const DrawnPlane& plane, double radius_in) {
  std::vector<Vec3> corners;
  for (int i = 0; i < circle_corners; ++i) {
    const double angle_rad = 2 * std::numbers::pi * i / circle_corners;
    corners.push_back(
        plane.in_space({radius_in * std::cos(angle_rad), radius_in * std::sin(angle_rad)}));
  }
  return corners;
}

std::vector<Vec3> rectangle(const DrawnPlane& plane, double width_in, double height_in) {
  const double u = width_in / 2;
  const double v = height_in / 2;
  return {plane.in_space({-u, -v}), plane.in_space({u, -v}), plane.in_space({u, v}),
          plane.in_space({-u, v})};
}

}  // namespace

double OpeningShape::edge_distance_in(Vec3 place) const {
  double least_in = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < outline.size(); ++i)
    least_in = std::min(
        least_in,
        nearest(place, Segment3{outline[i], outline[(i + 1) % outline.size()]}).distance_in);
  return least_in;
}

double OpeningShape::clear_radius_in() const {
  if (opening->diameter_in) return *opening->diameter_in / 2;
  return holds(centre, opening_depth_in) ? edge_distance_in(centre) : 0;
}

double OpeningShape::longest_across_in() const {
  double longest_in = 0;
  for (const Vec3 a : outline)
    for (const Vec3 b : outline) longest_in = std::max(longest_in, distance(a, b));
  return longest_in;
}

bool OpeningShape::holds(Vec3 place, double within_in) const {
  if (std::abs(dot(place - centre, normal)) > within_in) return false;
  bool inside = false;
  const Vec2 p = plane.seen(place);
  if (p.u < least.u || p.u > most.u || p.v < least.v || p.v > most.v) return false;
  for (std::size_t i = 0; i < in_plane.size(); ++i) {
    const Vec2 a = in_plane[i];
    const Vec2 b = in_plane[(i + 1) % in_plane.size()];
    if ((a.v > p.v) != (b.v > p.v) && p.u < (b.u - a.u) * (p.v - a.v) / (b.v - a.v) + a.u)
      inside = !inside;
  }
  return inside;
}

Bounds OpeningShape::cuts_within() const {
  Bounds bounds = empty_bounds();
  for (const Vec2 corner : in_plane) include(bounds, plane.in_space(corner));
  return grown(bounds, opening_depth_in);
}

OpeningShape shape_of(const Opening& opening, const PreparedProject& prepared) {
  OpeningShape shape;
  shape.opening = &opening;
  shape.centre = opening.centre;
  if (!opening.outline.empty())
    shape.normal = outline_normal(opening.outline);
  else
    shape.normal =
        opening.normal ? unit(*opening.normal) : normal_of_wall(opening.centre, prepared);
  shape.plane = plane_of(shape.centre, shape.normal);
  if (!opening.outline.empty())
    shape.outline = opening.outline;
  else if (opening.size_in)
    shape.outline = rectangle(shape.plane, (*opening.size_in)[0], (*opening.size_in)[1]);
  else
    shape.outline = circle(shape.plane, opening.diameter_in.value_or(0) / 2);
  for (const Vec3 corner : shape.outline) shape.in_plane.push_back(shape.plane.seen(corner));
  shape.least = shape.most = shape.in_plane.front();
  for (const Vec2 corner : shape.in_plane) {
    shape.least = {std::min(shape.least.u, corner.u), std::min(shape.least.v, corner.v)};
    shape.most = {std::max(shape.most.u, corner.u), std::max(shape.most.v, corner.v)};
  }
  return shape;
}

bool is_cut_into_something(const OpeningShape& shape, const PreparedProject& prepared) {
  std::vector<Vec3> places = shape.outline;
  places.push_back(shape.centre);
  const Obstacles& obstacles = prepared.obstacles;
  bool found = false;
  const auto look_at = [&](Vec3 place, const Obstacle& obstacle) {
    const Part& part = obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
    const bool stands =
        !part.moves && part.kind != PartKind::fitting && part.kind != PartKind::pulley;
    found = found || (stands && nearest(place, obstacle).distance_in <= opening_depth_in);
  };
  for (const Vec3 place : places)
    obstacles.visit_near({place, place}, opening_depth_in,
                         [&](const Obstacle& obstacle, bool) { look_at(place, obstacle); });
  return found;
}

}  // namespace linewright
