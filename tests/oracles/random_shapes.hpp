#pragma once
// Random segments, triangles and polygons, about the size of an aeroplane, many of them awkward on
// purpose: parallel, in one plane, touching, thin or of no size.

#include <cmath>
#include <numbers>
#include <vector>

#include "geometry/distance.hpp"
#include "oracles/random_path.hpp"

namespace linewright::oracles {

inline constexpr double reach_in = 300;

inline Segment3 random_segment(Random& random) {
  return {random.point(reach_in), random.point(reach_in)};
}

inline Triangle3 random_triangle(Random& random) {
  return {random.point(reach_in), random.point(reach_in), random.point(reach_in)};
}

/// A corner of a coarse grid: three of these are often in line, four often in one plane.
inline Vec3 grid_point(Random& random) {
  const auto step = [&random] { return static_cast<double>(random.whole(-2, 2)); };
  const double x = step(), y = step(), z = step();
  return {x, y, z};
}

inline Segment3 grid_segment(Random& random) {
  return {grid_point(random), grid_point(random)};
}

inline Triangle3 grid_triangle(Random& random) {
  return {grid_point(random), grid_point(random), grid_point(random)};
}

/// From 10^low to 10^high, every power of ten alike.
inline double magnitude(Random& random, double low, double high) {
  return std::pow(10, random.between(low, high));
}

/// Nearly parallel to `other` and close by.
inline Segment3 nearly_parallel(Random& random, const Segment3& other) {
  const double off_in = magnitude(random, -12, 1);
  const Vec3 shift = (other.b - other.a) * random.between(-1, 1) + random.point(off_in);
  return {other.a + shift + random.point(off_in), other.b + shift};
}

/// Nearly in line: its third corner lies close to the line of the other two.
inline Triangle3 thin_triangle(Random& random) {
  const Segment3 base = random_segment(random);
  const Vec3 near = between(base.a, base.b, random.between(-0.2, 1.2));
  return {base.a, base.b, near + random.direction() * magnitude(random, -13, 0)};
}

/// A point of the triangle.
inline Vec3 point_of(Random& random, const Triangle3& triangle) {
  const double first = random.between(0, 1), second = random.between(0, 1);
  return between(between(triangle.a, triangle.b, first), triangle.c, second);
}

/// A star-shaped polygon: simple, mostly far from convex.
inline std::vector<Vec2> star_polygon(Random& random, Vec2 centre, double least, double most,
                                      int corners) {
  std::vector<Vec2> result;
  for (int i = 0; i < corners; ++i) {
    const double angle_rad = 2 * std::numbers::pi * (i + random.between(0, 0.9)) / corners;
    result.push_back(centre +
                     Vec2{std::cos(angle_rad), std::sin(angle_rad)} * random.between(least, most));
  }
  return result;
}

inline Segment3 moved(const RigidMotion& motion, const Segment3& s) {
  return {motion.move(s.a), motion.move(s.b)};
}

inline Triangle3 moved(const RigidMotion& motion, const Triangle3& t) {
  return {motion.move(t.a), motion.move(t.b), motion.move(t.c)};
}

}  // namespace linewright::oracles
