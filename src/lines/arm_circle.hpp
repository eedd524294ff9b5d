#pragma once
// Where the end of an arm goes as it turns.

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

}  // namespace linewright
