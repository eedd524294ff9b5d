#include "geometry/distance.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>

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
    thin_ = squared(normal_) < nearly_parallel * squared(ab) * squared(ac);
    if (thin_) normal_ = careful_cross(ab, ac);
    normal_squared_ = squared(normal_);
  }

  bool exists() const { return normal_squared_ > smallest_normal_squared; }
  /// Of a sliver it takes its edges, too, to say how near it is.
  bool is_thin() const { return thin_; }

  /// Height over the plane, times the length of the normal.
  double height(Vec3 point) const { return dot(normal_, point - triangle_.a); }

  /// True where the point's foot on the plane falls inside or on the triangle.
  bool under(Vec3 point) const { return edges_passed(point) == 0; }

  /// A bit for each of the edges ab, bc and ca that the point's foot lies beyond.
  unsigned edges_passed(Vec3 point) const {
    const auto inside = [&](Vec3 from, Vec3 to) {
      return dot(cross(to - from, point - from), normal_) >= 0;
    };
    return (inside(triangle_.a, triangle_.b) ? 0U : 1U) |
           (inside(triangle_.b, triangle_.c) ? 0U : 2U) |
           (inside(triangle_.c, triangle_.a) ? 0U : 4U);
  }

  Vec3 foot(Vec3 point) const { return point - normal_ * (height(point) / normal_squared_); }

 private:
  // Below this the square of the normal has lost bits to underflow: edges of 1e-70 in.
  static constexpr double smallest_normal_squared = 1e-280;

  const Triangle3& triangle_;
  Vec3 normal_;
  double normal_squared_ = 0;
  bool thin_ = false;
};

constexpr unsigned all_edges = 7;

/// On those edges, of which there is one at least, that have a bit set: ab, bc and ca.
template <typename Shape>
PointPair closest_on_edges(const Shape& shape, const Triangle3& triangle,
                           unsigned edges = all_edges) {
  const std::array<Segment3, 3> each{
      Segment3{triangle.a, triangle.b}, {triangle.b, triangle.c}, {triangle.c, triangle.a}};
  std::optional<PointPair> best;
  for (std::size_t i = 0; i < each.size(); ++i) {
    if ((edges >> i & 1U) == 0) continue;
    const PointPair found = closest(shape, each[i]);
    best = best ? nearer(*best, found) : found;
  }
  return *best;
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
  unsigned passed = 0;
  const bool crosses_plane = (height_a <= 0) != (height_b <= 0);
  if (crosses_plane) {
    const Vec3 piercing = between(segment.a, segment.b, height_a / (height_a - height_b));
    passed = face.edges_passed(piercing);
    if (passed == 0) return {0, piercing, piercing};
  }
  const unsigned passed_a = face.edges_passed(segment.a);
  const unsigned passed_b = face.edges_passed(segment.b);
  passed |= passed_a | passed_b;
  // No place of the triangle is nearer than its plane is.
  const bool a_is_lower = std::abs(height_a) <= std::abs(height_b);
  if (!crosses_plane && !face.is_thin() && (a_is_lower ? passed_a : passed_b) == 0) {
    const Vec3 lower = a_is_lower ? segment.a : segment.b;
    return measured({lower, face.foot(lower)});
  }
  // The way to the triangle ends on no edge that the whole segment is on the inner side of.
  PointPair best =
      closest_on_edges(segment, triangle, face.is_thin() || passed == 0 ? all_edges : passed);
  if (passed_a == 0) best = nearer(best, {segment.a, face.foot(segment.a)});
  if (passed_b == 0) best = nearer(best, {segment.b, face.foot(segment.b)});
  return measured(best);
}

}  // namespace linewright
