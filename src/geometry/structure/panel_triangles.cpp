#include "geometry/structure/panel_triangles.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "geometry/plane/polygon.hpp"

namespace linewright {
namespace {

/// Square to the polygon as a whole, twice its area long.
Vec3 area_vector(const std::vector<Vec3>& corners) {
  Vec3 sum;
  for (std::size_t i = 1; i + 1 < corners.size(); ++i)
    sum = sum + cross(corners[i] - corners[0], corners[i + 1] - corners[0]);
  return sum;
}

bool is_flat(const std::vector<Vec3>& corners, Vec3 normal) {
  const double length = norm(normal);
  return length > 0 && std::all_of(corners.begin(), corners.end(), [&](Vec3 corner) {
           return std::abs(dot(normal, corner - corners[0])) <= flat_panel_in * length;
         });
}

/// The corners seen along the axis that the normal mostly follows.
std::vector<Vec2> seen_along(Vec3 normal, const std::vector<Vec3>& corners) {
  const double x = std::abs(normal.x), y = std::abs(normal.y), z = std::abs(normal.z);
  std::vector<Vec2> seen;
  for (const Vec3 corner : corners) {
    if (x >= y && x >= z)
      seen.push_back({corner.y, corner.z});
    else
      seen.push_back(y >= z ? Vec2{corner.x, corner.z} : Vec2{corner.x, corner.y});
  }
  return seen;
}

/// Nothing where the triangles do not tile the polygon.
std::optional<std::vector<Triangle3>> tiling(const std::vector<Vec3>& corners,
                                             const std::vector<Vec2>& seen) {
  if (!is_simple_polygon(seen)) return std::nullopt;
  const auto corner = [&](Vec2 at) {
    return corners[static_cast<std::size_t>(std::find(seen.begin(), seen.end(), at) -
                                            seen.begin())];
  };
  std::vector<Triangle3> triangles;
  double unaccounted_in2 = area(seen);
  for (const auto& [a, b, c] : triangulate(seen, {})) {
    triangles.push_back({corner(a), corner(b), corner(c)});
    unaccounted_in2 -= area({a, b, c});
  }
  if (std::abs(unaccounted_in2) > 1e-6 * area(seen)) return std::nullopt;
  return triangles;
}

std::vector<Triangle3> fan(const std::vector<Vec3>& corners) {
  std::vector<Triangle3> triangles;
  for (std::size_t i = 1; i + 1 < corners.size(); ++i)
    triangles.push_back({corners[0], corners[i], corners[i + 1]});
  return triangles;
}

}  // namespace

std::vector<Triangle3> panel_triangles(const std::vector<Vec3>& corners) {
  if (corners.size() < 3) return {};
  const Vec3 normal = area_vector(corners);
  if (is_flat(corners, normal))
    if (const auto tiles = tiling(corners, seen_along(normal, corners))) return *tiles;
  return fan(corners);
}

}  // namespace linewright
