#include "geometry/structure/panel_triangles.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <optional>
#include <set>
#include <utility>

#include "geometry/plane/polygon.hpp"

namespace linewright {
namespace {

/// Along each side of a warped panel, however strongly it is warped.
constexpr int most_steps = 16;

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

/// Fans about every corner, each triangle once: whichever corner is named first, and whichever way
/// round, these are the same.
std::vector<Triangle3> all_fans(const std::vector<Vec3>& corners) {
  const std::size_t count = corners.size();
  std::set<std::array<std::size_t, 3>> known;
  std::vector<Triangle3> triangles;
  for (std::size_t hub = 0; hub < count; ++hub)
    for (std::size_t i = 0; i < count; ++i) {
      std::array<std::size_t, 3> triangle{hub, i, (i + 1) % count};
      if (i == hub || triangle[2] == hub) continue;
      std::sort(triangle.begin(), triangle.end());
      if (known.insert(triangle).second)
        triangles.push_back({corners[triangle[0]], corners[triangle[1]], corners[triangle[2]]});
    }
  return triangles;
}

/// The surface that four corners span evenly, halfway between the two ways of folding it.
std::vector<Triangle3> evenly_warped(const std::vector<Vec3>& corners) {
  const Vec3 twist = corners[0] - corners[1] + corners[2] - corners[3];
  const int steps = std::clamp(
      static_cast<int>(std::ceil(std::sqrt(norm(twist) / flat_panel_in) / 2)), 2, most_steps);
  const auto at = [&](int i, int j) {
    const double u = static_cast<double>(i) / steps;
    const double v = static_cast<double>(j) / steps;
    return between(between(corners[0], corners[1], u), between(corners[3], corners[2], u), v);
  };
  std::vector<Triangle3> triangles;
  for (int i = 0; i < steps; ++i)
    for (int j = 0; j < steps; ++j) {
      // Each cell is folded both ways, too, so that no corner is preferred.
      const std::vector<Triangle3> cell =
          all_fans({at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)});
      triangles.insert(triangles.end(), cell.begin(), cell.end());
    }
  return triangles;
}

/// The corners of the convex hull, in order, of those seen: Andrew's monotone chain.
std::vector<std::size_t> hull_of(const std::vector<Vec2>& seen) {
  std::vector<std::size_t> order(seen.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return std::pair{seen[a].u, seen[a].v} < std::pair{seen[b].u, seen[b].v};
  });
  std::vector<std::size_t> hull;
  const auto walk = [&](auto first, auto last) {
    const std::size_t start = hull.size();
    for (; first != last; ++first) {
      while (hull.size() >= start + 2 && cross(seen[hull.back()] - seen[hull[hull.size() - 2]],
                                               seen[*first] - seen[hull[hull.size() - 2]]) <= 0)
        hull.pop_back();
      hull.push_back(*first);
    }
    hull.pop_back();
  };
  walk(order.begin(), order.end());
  walk(order.rbegin(), order.rend());
  return hull;
}

}  // namespace

std::optional<MeanPanel> mean_panel(const std::vector<Vec3>& corners) {
  const Vec3 normal = area_vector(corners);
  if (corners.size() <= most_fanned_corners || norm(normal) <= 0 || is_flat(corners, normal))
    return std::nullopt;
  const Vec3 square = unit(normal);
  double low = 0;
  double high = 0;
  for (const Vec3 corner : corners) {
    low = std::min(low, dot(square, corner - corners[0]));
    high = std::max(high, dot(square, corner - corners[0]));
  }
  std::vector<Vec3> flattened;
  for (const Vec3 corner : corners)
    flattened.push_back(corner + square * ((low + high) / 2 - dot(square, corner - corners[0])));
  MeanPanel mean{{}, (high - low) / 2};
  const std::vector<Vec2> seen = seen_along(square, flattened);
  if (const auto tiles = tiling(flattened, seen)) {
    mean.triangles = *tiles;
    return mean;
  }
  const std::vector<std::size_t> hull = hull_of(seen);
  for (std::size_t i = 1; i + 1 < hull.size(); ++i)
    mean.triangles.push_back({flattened[hull[0]], flattened[hull[i]], flattened[hull[i + 1]]});
  return mean;
}

std::vector<Triangle3> panel_triangles(const std::vector<Vec3>& corners) {
  if (corners.size() < 3) return {};
  const Vec3 normal = area_vector(corners);
  if (is_flat(corners, normal))
    if (const auto tiles = tiling(corners, seen_along(normal, corners))) return *tiles;
  std::vector<Triangle3> triangles = all_fans(corners);
  if (corners.size() == 4)
    for (const Triangle3& triangle : evenly_warped(corners)) triangles.push_back(triangle);
  return triangles;
}

}  // namespace linewright
