#include "geometry/distance.hpp"

#include <algorithm>
#include <cmath>

// Two habits keep these kernels exact to rounding. Every answer is a pair of points that really lie
// on the two shapes, so a distance is never understated by a bad parameter. And parameters come
// from cross products of differences, not from differences of squared dot products, so that nearly
// parallel segments and thin triangles lose nothing but what their corners' own rounding costs.

namespace linewright {
namespace {

double squared(Vec3 a) {
  return dot(a, a);
}

/// Two points and the square of their distance: the root is taken once, at the end.
struct PointPair {
  Vec3 on_first;
  Vec3 on_second;
  double squared_in2;

  PointPair(Vec3 first, Vec3 second)
      : on_first(first), on_second(second), squared_in2(squared(second - first)) {}
};

PointPair nearer(const PointPair& a, const PointPair& b) {
  return b.squared_in2 < a.squared_in2 ? b : a;
}

Nearest measured(const PointPair& pair) {
  return {std::sqrt(pair.squared_in2), pair.on_first, pair.on_second};
}

/// projection / length², held to the segment; zero on a segment of no length.
double held_fraction(double projection, double length_squared) {
  return length_squared > 0 ? std::clamp(projection / length_squared, 0.0, 1.0) : 0.0;
}

/// Like `between`, but exact at the far end.
Vec3 along(const Segment3& segment, double fraction) {
  return fraction == 1 ? segment.b : between(segment.a, segment.b, fraction);
}

PointPair closest(Vec3 point, const Segment3& segment) {
  const Vec3 span = segment.b - segment.a;
  const double fraction = held_fraction(dot(point - segment.a, span), squared(span));
  return {point, along(segment, fraction)};
}

/// Directions whose cross product is smaller than this part of |a|²·|b|² (an angle under 0.6
/// degree) count as nearly parallel and are looked at more carefully.
constexpr double nearly_parallel = 1e-4;

PointPair closest(const Segment3& first, const Segment3& second) {
  const Vec3 along_first = first.b - first.a;
  const Vec3 along_second = second.b - second.a;
  const Vec3 apart = second.a - first.a;
  const double first_squared = squared(along_first);
  const double second_squared = squared(along_second);
  const double both = dot(along_first, along_second);
  const double apart_first = dot(apart, along_first);
  const double apart_second = dot(apart, along_second);
  const auto at = [&](double s, double t) { return PointPair(along(first, s), along(second, t)); };
  const auto foot_on_first = [&](double t) {
    return held_fraction(apart_first + t * both, first_squared);
  };
  const auto foot_on_second = [&](double s) {
    return held_fraction(s * both - apart_second, second_squared);
  };

  // The minimum lies at an end of one of the two...
  const auto with_ends = [&](PointPair best) {
    best = nearer(best, at(1, foot_on_second(1)));
    best = nearer(best, at(foot_on_first(0), 0));
    return nearer(best, at(foot_on_first(1), 1));
  };
  // ...or where both are met by their common normal.
  const Vec3 normal = cross(along_first, along_second);
  const double normal_squared = squared(normal);
  if (normal_squared > 0) {
    const double s = dot(cross(apart, along_second), normal) / normal_squared;
    const double t = (s * both - apart_second) / second_squared;
    if (s >= 0 && s <= 1 && t >= 0 && t <= 1) {
      const PointPair crossing = at(s, t);
      if (normal_squared > nearly_parallel * first_squared * second_squared) return crossing;
      return with_ends(nearer(at(0, foot_on_second(0)), crossing));
    }
  }
  return with_ends(at(0, foot_on_second(0)));
}

/// a·b − c·d to the last bit or two, by Kahan's compensation.
double product_difference(double a, double b, double c, double d) {
  const double cd = c * d;
  return std::fma(a, b, -cd) + std::fma(-c, d, cd);
}

/// cross(a, b) with every component exact to rounding, however thin the angle.
Vec3 careful_cross(Vec3 a, Vec3 b) {
  return {product_difference(a.y, b.z, a.z, b.y), product_difference(a.z, b.x, a.x, b.z),
          product_difference(a.x, b.y, a.y, b.x)};
}

/// The inside of a triangle, seen along its normal. A triangle of no area has none.
class Face {
 public:
  explicit Face(const Triangle3& triangle) : triangle_(triangle) {
    const Vec3 ab = triangle.b - triangle.a;
    const Vec3 ac = triangle.c - triangle.a;
    normal_ = cross(ab, ac);
    if (squared(normal_) < nearly_parallel * squared(ab) * squared(ac))
      normal_ = careful_cross(ab, ac);
    normal_squared_ = squared(normal_);
  }

  bool exists() const { return normal_squared_ > smallest_normal_squared; }

  /// Height over the plane, times the length of the normal.
  double height(Vec3 point) const { return dot(normal_, point - triangle_.a); }

  /// True where the point's foot on the plane falls inside or on the triangle.
  bool under(Vec3 point) const {
    const auto inside = [&](Vec3 from, Vec3 to) {
      return dot(cross(to - from, point - from), normal_) >= 0;
    };
    return inside(triangle_.a, triangle_.b) && inside(triangle_.b, triangle_.c) &&
           inside(triangle_.c, triangle_.a);
  }

  Vec3 foot(Vec3 point) const { return point - normal_ * (height(point) / normal_squared_); }

 private:
  // Below this the square of the normal has lost bits to underflow: edges of 1e-70 in.
  static constexpr double smallest_normal_squared = 1e-280;

  const Triangle3& triangle_;
  Vec3 normal_;
  double normal_squared_ = 0;
};

template <typename Shape>
PointPair closest_on_edges(const Shape& shape, const Triangle3& triangle) {
  const PointPair ab = closest(shape, Segment3{triangle.a, triangle.b});
  const PointPair bc = closest(shape, Segment3{triangle.b, triangle.c});
  const PointPair ca = closest(shape, Segment3{triangle.c, triangle.a});
  return nearer(nearer(ab, bc), ca);
}

}  // namespace

Nearest nearest(Vec3 point, const Segment3& segment) {
  return measured(closest(point, segment));
}

Nearest nearest(const Segment3& first, const Segment3& second) {
  return measured(closest(first, second));
}

Nearest nearest(Vec3 point, const Triangle3& triangle) {
  const Face face(triangle);
  if (face.exists() && face.under(point)) return measured({point, face.foot(point)});
  return measured(closest_on_edges(point, triangle));
}

Nearest nearest(const Segment3& segment, const Triangle3& triangle) {
  const Face face(triangle);
  if (!face.exists()) return measured(closest_on_edges(segment, triangle));

  const double height_a = face.height(segment.a);
  const double height_b = face.height(segment.b);
  const bool crosses_plane = (height_a <= 0) != (height_b <= 0);
  if (crosses_plane) {
    const Vec3 piercing = between(segment.a, segment.b, height_a / (height_a - height_b));
    if (face.under(piercing)) return {0, piercing, piercing};
  }
  PointPair best = closest_on_edges(segment, triangle);
  for (const Vec3 end : {segment.a, segment.b})
    if (face.under(end)) best = nearer(best, {end, face.foot(end)});
  return measured(best);
}

}  // namespace linewright
