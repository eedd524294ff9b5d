#include "input/outline_check.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace linewright {

namespace {

constexpr double same_place_in = 1e-6;
constexpr double least_area_in2 = 1e-9;

bool is_read(Vec2 point) {
  return std::isfinite(point.u) && std::isfinite(point.v);
}
bool is_read(Vec3 point) {
  return std::isfinite(point.x) && std::isfinite(point.y) && std::isfinite(point.z);
}

template <typename Point>
bool all_read(const std::vector<Point>& points) {
  return std::all_of(points.begin(), points.end(), [](Point point) { return is_read(point); });
}

template <typename Point>
std::optional<OutlineFault> count_fault(const std::vector<Point>& points, std::size_t least,
                                        std::string_view what) {
  if (points.size() < least)
    return OutlineFault{
        fmt::format("expected at least {} {}, found {}", least, what, points.size()), {}};
  if (points.size() > most_corners)
    return OutlineFault{
        fmt::format("expected at most {} {}, found {}", most_corners, what, points.size()), {}};
  return std::nullopt;
}

template <typename Point>
std::optional<OutlineFault> neighbour_fault(const std::vector<Point>& points, bool closed,
                                            std::string_view what) {
  for (std::size_t i = 1; i < points.size(); ++i)
    if (distance(points[i - 1], points[i]) < same_place_in)
      return OutlineFault{fmt::format("{} {} and {} are at the same place", what, i, i + 1), i};
  if (closed && distance(points.back(), points.front()) < same_place_in)
    return OutlineFault{"the last corner repeats the first: the outline closes by itself",
                        points.size() - 1};
  return std::nullopt;
}

template <typename Point>
std::optional<OutlineFault> open_path_fault(const std::vector<Point>& points) {
  if (auto fault = count_fault(points, 2, "points")) return fault;
  if (!all_read(points)) return std::nullopt;
  return neighbour_fault(points, false, "points");
}

double doubled_area(Vec2 a, Vec2 b, Vec2 point) {
  return cross(b - a, point - a);
}

bool in_box(Vec2 a, Vec2 b, Vec2 point) {
  return std::min(a.u, b.u) <= point.u && point.u <= std::max(a.u, b.u) &&
         std::min(a.v, b.v) <= point.v && point.v <= std::max(a.v, b.v);
}

int sign(double value) {
  return (value > 0) - (value < 0);
}

bool edges_meet(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
  const int c_side = sign(doubled_area(a, b, c));
  const int d_side = sign(doubled_area(a, b, d));
  const int a_side = sign(doubled_area(c, d, a));
  const int b_side = sign(doubled_area(c, d, b));
  if (c_side * d_side < 0 && a_side * b_side < 0) return true;
  return (c_side == 0 && in_box(a, b, c)) || (d_side == 0 && in_box(a, b, d)) ||
         (a_side == 0 && in_box(c, d, a)) || (b_side == 0 && in_box(c, d, b));
}

/// The outline's edges, from corner i to the next.
struct Edges {
  const std::vector<Vec2>& corners;
  Vec2 start(std::size_t i) const { return corners[i]; }
  Vec2 end(std::size_t i) const { return corners[(i + 1) % corners.size()]; }
  double least_u(std::size_t i) const { return std::min(start(i).u, end(i).u); }
  double most_u(std::size_t i) const { return std::max(start(i).u, end(i).u); }
};

/// A corner where the outline turns back along the edge it came by.
std::optional<OutlineFault> spike_fault(const Edges& edges) {
  const std::size_t count = edges.corners.size();
  for (std::size_t i = 0; i < count; ++i) {
    const std::size_t next = (i + 1) % count;
    const Vec2 in = edges.end(i) - edges.start(i);
    const Vec2 out = edges.end(next) - edges.start(next);
    if (dot(in, out) < 0 && std::abs(cross(in, out)) <= 1e-12 * norm(in) * norm(out))
      return OutlineFault{fmt::format("the outline doubles back at corner {}", next + 1), next};
  }
  return std::nullopt;
}

/// Two edges that are no neighbours and meet. Sorted by where they begin, so that edges far apart
/// are never compared.
std::optional<OutlineFault> crossing_fault(const Edges& edges) {
  const std::size_t count = edges.corners.size();
  std::vector<std::size_t> order(count);
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&edges](std::size_t a, std::size_t b) {
    return edges.least_u(a) < edges.least_u(b);
  });
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t j = i + 1; j < count; ++j) {
      if (edges.least_u(order[j]) > edges.most_u(order[i])) break;
      const auto [first, second] = std::minmax(order[i], order[j]);
      if (second - first <= 1 || second - first == count - 1) continue;
      if (edges_meet(edges.start(first), edges.end(first), edges.start(second), edges.end(second)))
        return OutlineFault{fmt::format("the outline crosses itself: the edge after corner {} "
                                        "meets the edge after corner {}",
                                        first + 1, second + 1),
                            second};
    }
  }
  return std::nullopt;
}

double area_in2(const std::vector<Vec2>& corners) {
  double twice = 0;
  for (std::size_t i = 0; i < corners.size(); ++i)
    twice += cross(corners[i] - corners[0], corners[(i + 1) % corners.size()] - corners[0]);
  return std::abs(twice) / 2;
}

/// Twice the polygon's area as a vector across it, however the corners lie in space.
Vec3 area_vector(const std::vector<Vec3>& corners) {
  Vec3 sum;
  for (std::size_t i = 0; i < corners.size(); ++i)
    sum = sum + cross(corners[i] - corners[0], corners[(i + 1) % corners.size()] - corners[0]);
  return sum;
}

/// The corner seen along the axis that the normal mostly follows.
Vec2 seen_along(Vec3 normal, Vec3 corner) {
  const double x = std::abs(normal.x);
  const double y = std::abs(normal.y);
  const double z = std::abs(normal.z);
  if (x >= y && x >= z) return {corner.y, corner.z};
  if (y >= z) return {corner.x, corner.z};
  return {corner.x, corner.y};
}

}  // namespace

std::optional<OutlineFault> outline_fault(const std::vector<Vec2>& corners) {
  if (auto fault = count_fault(corners, 3, "corners")) return fault;
  if (!all_read(corners)) return std::nullopt;
  if (auto fault = neighbour_fault(corners, true, "corners")) return fault;
  const Edges edges{corners};
  if (auto fault = spike_fault(edges)) return fault;
  if (auto fault = crossing_fault(edges)) return fault;
  if (area_in2(corners) < least_area_in2) return OutlineFault{"the outline has no area", {}};
  return std::nullopt;
}

std::optional<OutlineFault> panel_fault(const std::vector<Vec3>& corners) {
  if (auto fault = count_fault(corners, 3, "corners")) return fault;
  if (!all_read(corners)) return std::nullopt;
  if (auto fault = neighbour_fault(corners, true, "corners")) return fault;
  const Vec3 normal = area_vector(corners);
  if (norm(normal) / 2 < least_area_in2) return OutlineFault{"the corners span no area", {}};
  constexpr double flat_in = 1e-3;
  const Vec3 direction = unit(normal);
  const bool flat = std::all_of(corners.begin(), corners.end(), [&](Vec3 corner) {
    return std::abs(dot(direction, corner - corners[0])) <= flat_in;
  });
  if (!flat) return std::nullopt;
  std::vector<Vec2> seen;
  for (const Vec3 corner : corners) seen.push_back(seen_along(normal, corner));
  return outline_fault(seen);
}

std::optional<OutlineFault> path_fault(const std::vector<Vec3>& points) {
  return open_path_fault(points);
}

std::optional<OutlineFault> path_fault(const std::vector<Vec2>& points) {
  return open_path_fault(points);
}

bool outline_covers(const std::vector<Vec2>& outline, Vec2 point) {
  constexpr double rounding_in = 1e-9;
  bool inside = false;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Vec2 a = outline[i];
    const Vec2 b = outline[(i + 1) % outline.size()];
    const Vec2 along = b - a;
    const double length_squared = dot(along, along);
    if (length_squared > 0) {
      const double t = std::clamp(dot(point - a, along) / length_squared, 0.0, 1.0);
      if (distance(point, a + along * t) <= rounding_in) return true;
    }
    if ((a.v > point.v) == (b.v > point.v)) continue;
    if (point.u < a.u + (point.v - a.v) / (b.v - a.v) * along.u) inside = !inside;
  }
  return inside;
}

}  // namespace linewright
