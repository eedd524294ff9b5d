#pragma once
// Segment to triangle in double precision, short and inlined, for the contestants whose traversal
// calls back for every triangle. Not as careful with needle-thin shapes as the product's kernel.

#include <algorithm>
#include <cmath>
#include <vector>

#include "geometry/distance.hpp"

namespace linewright::bench {

inline double held(double value) {
  return std::min(1.0, std::max(0.0, value));
}

inline double lean_squared(const Segment3& segment, Vec3 from, Vec3 to) {
  const Vec3 d = segment.b - segment.a;
  const Vec3 e = to - from;
  const Vec3 r = from - segment.a;
  const double dd = dot(d, d);
  const double ee = dot(e, e);
  const double b = dot(d, e);
  const double c = dot(d, r);
  const double f = dot(e, r);
  const double divisor = dd * ee - b * b;
  double s = divisor > 1e-12 * dd * ee ? held((c * ee - b * f) / divisor) : 0;
  double t = ee > 0 ? held((s * b - f) / ee) : 0;
  s = dd > 0 ? held((t * b + c) / dd) : 0;
  t = ee > 0 ? held((s * b - f) / ee) : 0;
  const Vec3 way = r + e * t - d * s;
  return dot(way, way);
}

/// From the segment's box to the triangle's box, squared.
inline double square_box_gap(const Segment3& segment, const Triangle3& triangle) {
  const auto gap = [](double a, double b, double p, double q, double r) {
    return std::max(
        {0.0, std::min({p, q, r}) - std::max(a, b), std::min(a, b) - std::max({p, q, r})});
  };
  const auto& [a, b, c] = triangle;
  const double x = gap(segment.a.x, segment.b.x, a.x, b.x, c.x);
  const double y = gap(segment.a.y, segment.b.y, a.y, b.y, c.y);
  const double z = gap(segment.a.z, segment.b.z, a.z, b.z, c.z);
  return x * x + y * y + z * z;
}

inline double lean_squared(const Segment3& segment, const Triangle3& triangle) {
  const Vec3 ab = triangle.b - triangle.a;
  const Vec3 ac = triangle.c - triangle.a;
  const Vec3 normal = cross(ab, ac);
  const double normal_squared = dot(normal, normal);
  double best = std::min({lean_squared(segment, triangle.a, triangle.b),
                          lean_squared(segment, triangle.b, triangle.c),
                          lean_squared(segment, triangle.c, triangle.a)});
  if (normal_squared <= 0) return best;
  const auto under = [&](Vec3 point) {
    const Vec3 p = point - triangle.a;
    const double v = dot(cross(p, ac), normal);
    const double w = dot(cross(ab, p), normal);
    return v >= 0 && w >= 0 && v + w <= normal_squared;
  };
  const double height_a = dot(normal, segment.a - triangle.a);
  const double height_b = dot(normal, segment.b - triangle.a);
  if ((height_a <= 0) != (height_b <= 0) &&
      under(between(segment.a, segment.b, height_a / (height_a - height_b))))
    return 0;
  if (height_a * height_a < best * normal_squared && under(segment.a))
    best = height_a * height_a / normal_squared;
  if (height_b * height_b < best * normal_squared && under(segment.b))
    best = height_b * height_b / normal_squared;
  return best;
}

/// The piece `i` of `pieces` equal ones.
inline Segment3 piece_of(const Segment3& segment, int i, int pieces) {
  return {between(segment.a, segment.b, static_cast<double>(i) / pieces),
          between(segment.a, segment.b, static_cast<double>(i + 1) / pieces)};
}

inline int pieces_of(const Segment3& segment, double longest_piece_in) {
  return std::max(1,
                  static_cast<int>(std::ceil(distance(segment.a, segment.b) / longest_piece_in)));
}

/// A triangle to begin a route with: the nearest of a few from all over.
inline std::size_t first_guess(const std::vector<Triangle3>& triangles, const Segment3& segment) {
  const std::size_t step = std::max<std::size_t>(1, triangles.size() / 200);
  std::size_t best = 0;
  for (std::size_t i = 0; i < triangles.size(); i += step)
    if (lean_squared(segment, triangles[i]) < lean_squared(segment, triangles[best])) best = i;
  return best;
}

}  // namespace linewright::bench
