#include "geometry/plane/hole_web.hpp"

#include <algorithm>
#include <limits>

#include "geometry/plane/polygon.hpp"

namespace linewright {

namespace {

using Polygon = std::vector<Vec2>;

/// From the polygon's edge outwards; below zero inside.
double outside_by_in(const Polygon& polygon, Vec2 place) {
  const double away = edge_distance(polygon, place);
  return covers(polygon, place) ? -away : away;
}

double least_outside_in(const Polygon& polygon, const Polygon& corners) {
  double least = std::numeric_limits<double>::infinity();
  for (const Vec2 corner : corners) least = std::min(least, outside_by_in(polygon, corner));
  return least;
}

double between_polygons_in(const Polygon& first, const Polygon& second) {
  const double least = std::min(least_outside_in(first, second), least_outside_in(second, first));
  return apart(first, second) ? least : std::min(least, 0.0);
}

double circle_to_polygon_in(const Circle& circle, const Polygon& polygon) {
  return outside_by_in(polygon, circle.centre) - circle.diameter_in / 2;
}

}  // namespace

double web_between_in(const Hole& first, const Hole& second) {
  const auto* a = std::get_if<Circle>(&first.shape);
  const auto* b = std::get_if<Circle>(&second.shape);
  if (a && b) return distance(a->centre, b->centre) - (a->diameter_in + b->diameter_in) / 2;
  if (a) return circle_to_polygon_in(*a, std::get<Polygon>(second.shape));
  if (b) return circle_to_polygon_in(*b, std::get<Polygon>(first.shape));
  return between_polygons_in(std::get<Polygon>(first.shape), std::get<Polygon>(second.shape));
}

double web_to_edge_in(const Polygon& outline, const Hole& hole) {
  if (const auto* circle = std::get_if<Circle>(&hole.shape)) {
    const double inside = -outside_by_in(outline, circle->centre);
    return inside - circle->diameter_in / 2;
  }
  const Polygon& corners = std::get<Polygon>(hole.shape);
  double least = std::numeric_limits<double>::infinity();
  for (const Vec2 corner : corners) least = std::min(least, -outside_by_in(outline, corner));
  // A corner of the outline that points inwards can be nearer to an edge of the hole, or in it.
  return std::min(least, least_outside_in(corners, outline));
}

}  // namespace linewright
