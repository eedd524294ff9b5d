#pragma once
// Where the end of an arm goes as it turns.

#include <algorithm>
#include <cmath>

#include "model/network.hpp"
#include "model/vector.hpp"

namespace linewright {

/// The circle that an arm's end goes round on: C + r (u cos φ + v sin φ), drawn at φ = 0.
struct ArmCircle {
  Vec3 centre;
  Vec3 u;
  Vec3 v;
  double radius_in = 0;
  Vec3 at(double angle_rad) const {
    return centre + (u * std::cos(angle_rad) + v * std::sin(angle_rad)) * radius_in;
  }
  /// The way the end goes there as the angle grows: a unit vector.
  Vec3 way_at(double angle_rad) const { return v * std::cos(angle_rad) - u * std::sin(angle_rad); }
};

/// Of an arm whose end is drawn at `end`, which must not lie on its axis.
inline ArmCircle circle_of(const Arm& arm, Vec3 end) {
  const Vec3 axis = unit(arm.axis);
  const Vec3 from_pivot = end - arm.pivot;
  const Vec3 outward = from_pivot - axis * dot(from_pivot, axis);
  ArmCircle circle;
  circle.centre = end - outward;
  circle.radius_in = norm(outward);
  circle.u = unit(outward);
  circle.v = cross(axis, circle.u);
  return circle;
}

/// Lengths that differ by less than this are one, but for rounding.
inline constexpr double arm_rounding_in = 1e-9;

/// The angle nearest to neutral at which the end is `length_in` from `start`; `reaches` becomes
/// false where it never is, and the angle then is where it comes nearest to that. With g from the
/// centre to the start, L² = r² + g² − 2 r |g in the plane| cos(φ − ψ), ψ being the angle of g.
inline double angle_at(const ArmCircle& circle, Vec3 start, double length_in, bool& reaches) {
  const Vec3 g = start - circle.centre;
  const double gu = dot(g, circle.u);
  const double gv = dot(g, circle.v);
  const double swing = 2 * circle.radius_in * std::hypot(gu, gv);
  const double level = circle.radius_in * circle.radius_in + dot(g, g);
  const double wanted = level - length_in * length_in;
  if (std::abs(wanted) > swing + 2 * arm_rounding_in * length_in || length_in < 0) reaches = false;
  if (swing <= 0) return 0;
  const double toward_start = std::atan2(gv, gu);
  const double away = std::acos(std::clamp(wanted / swing, -1.0, 1.0));
  return toward_start > 0 ? toward_start - away : toward_start + away;
}

}  // namespace linewright
