#pragma once
// The axis that a channel's section is drawn across.

#include <array>
#include <cmath>
#include <vector>

#include "model/vector.hpp"

namespace linewright {

/// How far the path goes along FS, BL and WL, there and back both counted.
inline Vec3 travel_of(const std::vector<Vec3>& path) {
  Vec3 sum;
  for (std::size_t i = 0; i + 1 < path.size(); ++i) {
    const Vec3 leg = path[i + 1] - path[i];
    sum = sum + Vec3{std::abs(leg.x), std::abs(leg.y), std::abs(leg.z)};
  }
  return sum;
}

/// Index of the axis that the path mainly goes along: 0 for FS, 1 for BL, 2 for WL.
inline std::size_t main_axis_of(const std::vector<Vec3>& path) {
  const auto [fs, bl, wl] = travel_of(path);
  if (fs >= bl && fs >= wl) return 0;
  return bl >= wl ? 1 : 2;
}

}  // namespace linewright
