#pragma once
// Where things drawn in a frame of their own stand in the aeroplane.

#include <array>
#include <cmath>

#include "model/angle.hpp"
#include "model/vector.hpp"

namespace linewright {

/// A linear map and a shift: a place `p` of the thing's own frame stands at rows * p + shift,
/// inches. By itself it leaves everything where it is.
struct Placement {
  std::array<double, 9> rows{1, 0, 0, 0, 1, 0, 0, 0, 1};  ///< row by row
  Vec3 shift;

  constexpr Vec3 apply(Vec3 p) const {
    return {rows[0] * p.x + rows[1] * p.y + rows[2] * p.z + shift.x,
            rows[3] * p.x + rows[4] * p.y + rows[5] * p.z + shift.y,
            rows[6] * p.x + rows[7] * p.y + rows[8] * p.z + shift.z};
  }

  friend bool operator==(const Placement&, const Placement&) = default;
};

/// `inner` first, then `outer`.
constexpr Placement composed(const Placement& outer, const Placement& inner) {
  Placement both;
  for (std::size_t row = 0; row < 3; ++row)
    for (std::size_t column = 0; column < 3; ++column) {
      double sum = 0;
      for (std::size_t i = 0; i < 3; ++i)
        sum += outer.rows[3 * row + i] * inner.rows[3 * i + column];
      both.rows[3 * row + column] = sum;
    }
  both.shift = outer.apply(inner.shift);
  return both;
}

/// All lengths multiplied by `factor`, about the origin.
constexpr Placement scaled(double factor) {
  return {{factor, 0, 0, 0, factor, 0, 0, 0, factor}, {}};
}

/// Moved by `shift`, inches.
constexpr Placement moved(Vec3 shift) {
  return {{1, 0, 0, 0, 1, 0, 0, 0, 1}, shift};
}

/// Turned about an axis through the origin by the right-hand rule. Quarter turns are exact.
/// Source: Rodrigues' rotation formula. Precondition: `axis` is not the zero vector.
inline Placement turned(Vec3 axis, double angle_deg) {
  const Vec3 a = unit(axis);
  const double quarters = angle_deg / 90;
  const bool exact = quarters == std::round(quarters);
  const double angle_rad = angle_deg / degrees_per_radian;
  const double s = exact ? std::round(std::sin(angle_rad)) : std::sin(angle_rad);
  const double c = exact ? std::round(std::cos(angle_rad)) : std::cos(angle_rad);
  const double d = 1 - c;
  return {{a.x * a.x * d + c, a.x * a.y * d - a.z * s, a.x * a.z * d + a.y * s,
           a.y * a.x * d + a.z * s, a.y * a.y * d + c, a.y * a.z * d - a.x * s,
           a.z * a.x * d - a.y * s, a.z * a.y * d + a.x * s, a.z * a.z * d + c},
          {}};
}

}  // namespace linewright
