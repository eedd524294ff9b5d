#include "geometry/plane/polygon.hpp"

#include <algorithm>
#include <boost/geometry/algorithms/area.hpp>
#include <boost/geometry/algorithms/correct.hpp>
#include <boost/geometry/algorithms/covered_by.hpp>
#include <boost/geometry/algorithms/disjoint.hpp>
#include <boost/geometry/algorithms/distance.hpp>
#include <boost/geometry/algorithms/is_valid.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/register/point.hpp>
#include <boost/geometry/geometries/ring.hpp>
#include <boost/geometry/strategies/strategies.hpp>
#include <cmath>
#include <limits>
#include <numbers>
#include <queue>

#include "geometry/plane/boost_fence.hpp"

BOOST_GEOMETRY_REGISTER_POINT_2D(linewright::Vec2, double, boost::geometry::cs::cartesian, u, v)

namespace linewright {
namespace {

namespace bg = boost::geometry;
using Ring = bg::model::ring<Vec2>;  // clockwise and closed, the kind Boost takes for granted
using LineString = bg::model::linestring<Vec2>;

Ring ring(const std::vector<Vec2>& polygon) {
  Ring result(polygon.begin(), polygon.end());
  bg::correct(result);
  return result;
}

/// The edge alone: a ring's distance would be zero inside.
LineString edge(const std::vector<Vec2>& polygon) {
  LineString result(polygon.begin(), polygon.end());
  result.push_back(polygon.front());
  return result;
}

bool finite(const std::vector<Vec2>& polygon) {
  return std::all_of(polygon.begin(), polygon.end(),
                     [](Vec2 p) { return std::isfinite(p.u) && std::isfinite(p.v); });
}

/// Shapes nearer than this touch.
constexpr double touching_in = 1e-6;
/// Chords for a circle that is held against a polygon.
constexpr double overlap_sagitta_in = 0.0005;

std::vector<Vec2> circle_polygon(const Circle& circle, double sagitta_in) {
  const double radius_in = circle.diameter_in / 2;
  const double half_angle_rad = std::acos(std::clamp(1 - sagitta_in / radius_in, 0.0, 1.0));
  const double needed = std::ceil(std::numbers::pi / half_angle_rad);
  constexpr double fewest = 8;
  constexpr double most = 4096;  // sagitta under 3e-7 of the radius: finer means nothing
  // A multiple of four: a mirrored hole then has the mirrored polygon.
  const int sides = 4 * static_cast<int>(std::ceil(std::clamp(needed, fewest, most) / 4));
  std::vector<Vec2> result;
  for (int side = 0; side < sides; ++side) {
    const double angle_rad = 2 * std::numbers::pi * side / sides;
    result.push_back(circle.centre + Vec2{std::cos(angle_rad), std::sin(angle_rad)} * radius_in);
  }
  return result;
}

/// A square that may hold a place farther from the edge than those known.
struct Cell {
  Vec2 middle;
  double half = 0;
  double depth = 0;  ///< of its middle, negative outside
  double most() const { return depth + half * std::numbers::sqrt2; }
  bool operator<(const Cell& other) const { return most() < other.most(); }
};

/// How far from the edge the deepest place of the polygon is: squares are halved, the most
/// promising first, until none can beat what is found.
double deepest_in(const std::vector<Vec2>& polygon) {
  if (polygon.size() < 3) return 0;
  Vec2 low = polygon.front(), high = low;
  for (const Vec2 corner : polygon) {
    low = {std::min(low.u, corner.u), std::min(low.v, corner.v)};
    high = {std::max(high.u, corner.u), std::max(high.v, corner.v)};
  }
  const double half = std::max(high.u - low.u, high.v - low.v) / 2;
  const auto cell = [&](Vec2 middle, double half_in) {
    const double away = edge_distance(polygon, middle);
    return Cell{middle, half_in, covers(polygon, middle) ? away : -away};
  };
  std::priority_queue<Cell> open;
  open.push(cell((low + high) * 0.5, half));
  double deepest = 0;
  while (!open.empty()) {
    const Cell best = open.top();
    open.pop();
    deepest = std::max(deepest, best.depth);
    if (best.most() <= deepest + half * 0.0005) break;
    const double quarter = best.half / 2;
    for (const double u : {-quarter, quarter})
      for (const double v : {-quarter, quarter}) open.push(cell(best.middle + Vec2{u, v}, quarter));
  }
  return deepest;
}

}  // namespace

bool covers(const std::vector<Vec2>& polygon, Vec2 point) {
  return polygon.size() >= 3 && bg::covered_by(point, ring(polygon));
}

bool covers(const Hole& hole, Vec2 point) {
  if (const auto* circle = std::get_if<Circle>(&hole.shape))
    return distance(circle->centre, point) <= circle->diameter_in / 2;
  return covers(std::get<std::vector<Vec2>>(hole.shape), point);
}

double edge_distance(const Hole& hole, Vec2 point) {
  if (const auto* circle = std::get_if<Circle>(&hole.shape))
    return std::abs(distance(circle->centre, point) - circle->diameter_in / 2);
  return edge_distance(std::get<std::vector<Vec2>>(hole.shape), point);
}

double edge_distance(const std::vector<Vec2>& polygon, Vec2 point) {
  if (polygon.empty()) return std::numeric_limits<double>::infinity();
  return bg::distance(point, edge(polygon));
}

double widest_circle_in(const Hole& hole) {
  if (const auto* circle = std::get_if<Circle>(&hole.shape)) return circle->diameter_in;
  return 2 * deepest_in(std::get<std::vector<Vec2>>(hole.shape));
}

bool overlap(const Hole& first, const Hole& second) {
  const auto* a = std::get_if<Circle>(&first.shape);
  const auto* b = std::get_if<Circle>(&second.shape);
  if (a && b)
    return distance(a->centre, b->centre) <= (a->diameter_in + b->diameter_in) / 2 + touching_in;
  return !apart(edge_polygon(first, overlap_sagitta_in), edge_polygon(second, overlap_sagitta_in));
}

bool leaves(const std::vector<Vec2>& outline, const Hole& hole) {
  const std::vector<Vec2> rim = edge_polygon(hole, overlap_sagitta_in);
  const auto is_out = [&](Vec2 place) {
    return !covers(outline, place) && edge_distance(outline, place) > touching_in;
  };
  for (std::size_t i = 0; i < rim.size(); ++i) {
    const Vec2 next = rim[(i + 1) % rim.size()];
    if (is_out(rim[i]) || is_out((rim[i] + next) * 0.5)) return true;
  }
  // A notch of the outline may reach in between.
  return std::any_of(outline.begin(), outline.end(), [&](Vec2 corner) {
    return covers(hole, corner) && edge_distance(hole, corner) > touching_in;
  });
}

std::vector<Vec2> edge_polygon(const Hole& hole, double sagitta_in) {
  if (const auto* circle = std::get_if<Circle>(&hole.shape))
    return circle_polygon(*circle, sagitta_in);
  return std::get<std::vector<Vec2>>(hole.shape);
}

bool is_simple_polygon(const std::vector<Vec2>& polygon) {
  if (polygon.size() < 3 || !finite(polygon)) return false;
  try {
    return bg::is_valid(ring(polygon));
  } catch (const bg::exception&) {
    return false;  // edges that nearly coincide can defeat Boost's search for crossings
  }
}

double area(const std::vector<Vec2>& polygon) {
  return polygon.size() < 3 ? 0.0 : std::abs(bg::area(ring(polygon)));
}

bool encloses(const std::vector<Vec2>& outer, const std::vector<Vec2>& inner) {
  return !inner.empty() && covers(outer, inner.front()) && bg::disjoint(edge(outer), edge(inner));
}

bool apart(const std::vector<Vec2>& first, const std::vector<Vec2>& second) {
  return first.empty() || second.empty() || bg::disjoint(ring(first), ring(second));
}

}  // namespace linewright
