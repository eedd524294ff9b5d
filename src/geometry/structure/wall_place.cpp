#include "geometry/structure/wall_place.hpp"

#include <algorithm>
#include <cmath>

#include "model/sheet.hpp"

namespace linewright {

DrawnPlane wall_plane(const WallPlace& place) {
  const Vec3& normal = place.normal;
  const Vec3 aside = std::abs(normal.x) < 0.9 ? Vec3{1, 0, 0} : Vec3{0, 1, 0};
  const Vec3 across = unit(cross(normal, aside));
  return {place.middle, normal, across, cross(normal, across)};
}

std::optional<WallPlace> board_place(const Box& box, Vec3 at, double within_in) {
  struct Side {
    Vec3 normal;
    double low, high, at;
  };
  const Side sides[] = {{{1, 0, 0}, box.min.x, box.max.x, at.x},
                        {{0, 1, 0}, box.min.y, box.max.y, at.y},
                        {{0, 0, 1}, box.min.z, box.max.z, at.z}};
  std::optional<WallPlace> best;
  double nearest_in = 0;
  for (const Side& side : sides) {
    if (side.at < side.low - within_in || side.at > side.high + within_in) return std::nullopt;
    const double thickness = side.high - side.low;
    const double away = std::min(std::abs(side.at - side.low), std::abs(side.at - side.high));
    if (thickness > largest_sheet_thickness_in || (best && away >= nearest_in)) continue;
    nearest_in = away;
    best = WallPlace{at + side.normal * ((side.low + side.high) / 2 - side.at), side.normal,
                     thickness};
  }
  return best;
}

WallPlace plate_place(const Obstacle& obstacle, Vec3 at) {
  const auto& [a, b, c] = obstacle.shape;
  const Vec3 normal = unit(cross(b - a, c - a));
  return {at - normal * dot(at - a, normal), normal, 2 * obstacle.radius_in};
}

}  // namespace linewright
