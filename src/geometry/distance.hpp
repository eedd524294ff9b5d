#pragma once
// Exact minimum distances between segments and triangles in space, in double precision, with the
// nearest point on each side. Boost.Geometry has no such kernels (and what of it compiles in three
// dimensions can be wrong), so they stand here and are tested against independent libraries.

#include "model/vector.hpp"

namespace linewright {

struct Segment3 {
  Vec3 a;
  Vec3 b;
};

struct Triangle3 {
  Vec3 a;
  Vec3 b;
  Vec3 c;
};

/// A minimum distance and the two points it is reached at.
struct Nearest {
  double distance_in = 0;
  Vec3 on_first;
  Vec3 on_second;
};

/// All of these accept degenerate input: a segment of no length, a triangle of no area.
Nearest nearest(Vec3 point, const Segment3& segment);
Nearest nearest(Vec3 point, const Triangle3& triangle);
Nearest nearest(const Segment3& first, const Segment3& second);
/// Zero where the segment pierces the triangle; the points are then the piercing point.
Nearest nearest(const Segment3& segment, const Triangle3& triangle);

}  // namespace linewright
