#pragma once
// FCL's triangle to triangle distance as an independent judge; a segment is a triangle that folds.

#include <fcl/narrowphase/detail/primitive_shape_algorithm/triangle_distance.h>

#include "geometry/distance.hpp"

namespace linewright::oracles {

inline double fcl_distance(const Triangle3& first, const Triangle3& second) {
  const auto vector = [](Vec3 p) { return fcl::Vector3<double>(p.x, p.y, p.z); };
  fcl::Vector3<double> on_first;
  fcl::Vector3<double> on_second;
  return fcl::detail::TriangleDistance<double>::triDistance(
      vector(first.a), vector(first.b), vector(first.c), vector(second.a), vector(second.b),
      vector(second.c), on_first, on_second);
}

inline double fcl_distance(const Segment3& segment, const Triangle3& triangle) {
  return fcl_distance(Triangle3{segment.a, segment.b, segment.b}, triangle);
}

inline double fcl_distance(const Segment3& first, const Segment3& second) {
  return fcl_distance(first, Triangle3{second.a, second.b, second.b});
}

}  // namespace linewright::oracles
