#pragma once
// Angles are degrees where people read them and radians where they are worked with.

#include <numbers>

namespace linewright {

inline constexpr double degrees_per_radian = 180 / std::numbers::pi;

constexpr double radians_of(double degrees) {
  return degrees * std::numbers::pi / 180;
}

}  // namespace linewright
