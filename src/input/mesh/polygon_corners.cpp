#include "input/mesh/polygon_corners.hpp"

#include <algorithm>
#include <cmath>

#include "geometry/plane/polygon.hpp"

namespace linewright {
namespace {

/// Square to the polygon as a whole, twice its area long.
Vec3 area_vector(const std::vector<Vec3>& polygon) {
  Vec3 sum;
  for (std::size_t i = 1; i + 1 < polygon.size(); ++i)
    sum = sum + cross(polygon[i] - polygon[0], polygon[i + 1] - polygon[0]);
  return sum;
}

std::vector<Vec2> seen_along(Vec3 normal, const std::vector<Vec3>& polygon) {
  const double x = std::abs(normal.x), y = std::abs(normal.y), z = std::abs(normal.z);
  std::vector<Vec2> seen;
  for (const Vec3 corner : polygon) {
    if (x >= y && x >= z)
      seen.push_back({corner.y, corner.z});
    else
      seen.push_back(y >= z ? Vec2{corner.x, corner.z} : Vec2{corner.x, corner.y});
  }
  return seen;
}

double seen_area(const std::vector<Vec2>& polygon) {
  double twice = 0;
  for (std::size_t i = 1; i + 1 < polygon.size(); ++i)
    twice += cross(polygon[i] - polygon[0], polygon[i + 1] - polygon[0]);
  return std::abs(twice) / 2;
}

/// True where the triangles tile the polygon: then their areas add up to its own.
bool tiles(const std::vector<std::array<Vec2, 3>>& triangles, double area_of_polygon) {
  double sum = 0;
  for (const auto& [a, b, c] : triangles) sum += std::abs(cross(b - a, c - a)) / 2;
  return std::abs(sum - area_of_polygon) <= 1e-6 * area_of_polygon;
}

/// True where no corner turns against the polygon's own sense.
bool is_convex(const std::vector<Vec3>& polygon) {
  if (polygon.size() <= 3) return true;
  const Vec3 normal = area_vector(polygon);
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vec3 here = polygon[(i + 1) % polygon.size()];
    const Vec3 next = polygon[(i + 2) % polygon.size()];
    if (dot(cross(here - polygon[i], next - here), normal) < 0) return false;
  }
  return true;
}

/// Clipping ears takes about a square of the corners' number in steps, and up to a cube of it where
/// edges cross or touch each other. A step of the second kind is far shorter.
double cost(const std::vector<Vec2>& polygon) {
  const auto count = static_cast<double>(polygon.size());
  return is_simple_polygon(polygon) ? count * count : count * count * std::max(1.0, count / 100);
}

}  // namespace

bool add_polygon(const std::vector<Vec3>& polygon, TilingBudget& budget,
                 std::vector<std::array<Vec3, 3>>& triangles) {
  if (!is_convex(polygon)) {
    const std::vector<Vec2> seen = seen_along(area_vector(polygon), polygon);
    budget -= cost(seen);
    if (budget < 0) return false;
    const std::vector<std::array<Vec2, 3>> tiling = triangulate(seen, {});
    const auto corner = [&](Vec2 at) {
      return polygon[static_cast<std::size_t>(std::find(seen.begin(), seen.end(), at) -
                                              seen.begin())];
    };
    if (tiles(tiling, seen_area(seen))) {
      for (const auto& [a, b, c] : tiling) triangles.push_back({corner(a), corner(b), corner(c)});
      return true;
    }
  }
  for (std::size_t i = 1; i + 1 < polygon.size(); ++i)
    triangles.push_back({polygon[0], polygon[i], polygon[i + 1]});
  return true;
}

}  // namespace linewright
