#pragma once
// Boxes along the axes, inches.

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/distance.hpp"

namespace linewright {

struct Bounds {
  Vec3 min;
  Vec3 max;
};

/// Holds nothing, and becomes the bounds of whatever it is made to include.
inline Bounds empty_bounds() {
  constexpr double far = std::numeric_limits<double>::infinity();
  return {{far, far, far}, {-far, -far, -far}};
}

/// `other` may be empty.
inline void include(Bounds& bounds, const Bounds& other) {
  bounds.min = {std::min(bounds.min.x, other.min.x), std::min(bounds.min.y, other.min.y),
                std::min(bounds.min.z, other.min.z)};
  bounds.max = {std::max(bounds.max.x, other.max.x), std::max(bounds.max.y, other.max.y),
                std::max(bounds.max.z, other.max.z)};
}

inline void include(Bounds& bounds, Vec3 point) {
  include(bounds, Bounds{point, point});
}

inline Bounds bounds_of(const Triangle3& shape) {
  Bounds bounds{shape.a, shape.a};
  include(bounds, shape.b);
  include(bounds, shape.c);
  return bounds;
}

inline Bounds grown(const Bounds& bounds, double by) {
  const Vec3 all{by, by, by};
  return {bounds.min - all, bounds.max + all};
}

/// No two points of the boxes are nearer than this.
inline double least_distance(const Bounds& a, const Bounds& b) {
  const double x = std::max({0.0, a.min.x - b.max.x, b.min.x - a.max.x});
  const double y = std::max({0.0, a.min.y - b.max.y, b.min.y - a.max.y});
  const double z = std::max({0.0, a.min.z - b.max.z, b.min.z - a.max.z});
  return std::sqrt(x * x + y * y + z * z);
}

}  // namespace linewright
