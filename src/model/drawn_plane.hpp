#pragma once
// A plane with two coordinates of its own, in which a frame's web is drawn.

#include "model/vector.hpp"

namespace linewright {

/// A plane in space. Its three directions are of unit length and square to each other. Seen with
/// the normal pointing at the reader, `across` is to the right where `up` is up.
struct DrawnPlane {
  Vec3 origin;           ///< where both coordinates are zero
  Vec3 normal{1, 0, 0};  ///< square to the plane
  Vec3 across{0, 1, 0};  ///< of the first coordinate
  Vec3 up{0, 0, 1};      ///< of the second

  /// How far a place lies off the plane, to the side that the normal points to.
  constexpr double above(Vec3 place) const { return dot(place - origin, normal); }
  /// The place's foot in the plane.
  constexpr Vec2 seen(Vec3 place) const {
    return {dot(place - origin, across), dot(place - origin, up)};
  }
  /// A direction as (off the plane, across, up).
  constexpr Vec3 turned(Vec3 direction) const {
    return {dot(direction, normal), dot(direction, across), dot(direction, up)};
  }
  /// A place as (above the plane, across, up).
  constexpr Vec3 placed(Vec3 place) const { return turned(place - origin); }
  /// Where in space a place of the plane is, `above` off it.
  constexpr Vec3 in_space(Vec2 drawn, double above = 0) const {
    return origin + across * drawn.u + up * drawn.v + normal * above;
  }

  friend bool operator==(const DrawnPlane&, const DrawnPlane&) = default;
};

/// FS = station; drawn in BL and WL.
constexpr DrawnPlane at_station(double station_in) {
  return {{station_in, 0, 0}};
}

/// BL = buttock line, as a rib stands; drawn in FS and WL.
constexpr DrawnPlane at_buttock_line(double buttock_line_in) {
  return {{0, buttock_line_in, 0}, {0, -1, 0}, {1, 0, 0}, {0, 0, 1}};
}

/// WL = waterline, as a floor lies; drawn in FS and BL.
constexpr DrawnPlane at_waterline(double waterline_in) {
  return {{0, 0, waterline_in}, {0, 0, 1}, {1, 0, 0}, {0, 1, 0}};
}

/// Through `point`, which is its origin, and square to `normal`; its second coordinate runs as far
/// toward `up` as the plane lets it. Precondition: the directions are not zero and not along each
/// other.
inline DrawnPlane plane_through(Vec3 point, Vec3 normal, Vec3 up) {
  const Vec3 n = unit(normal);
  const Vec3 across = unit(cross(up, n));
  return {point, n, across, cross(n, across)};
}

}  // namespace linewright
