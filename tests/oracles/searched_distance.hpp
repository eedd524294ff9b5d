#pragma once
// Distances found by search alone: no projections, no regions, no cross products. Slow and obvious.

#include <algorithm>
#include <limits>

#include "geometry/distance.hpp"
#include "oracles/golden_section.hpp"

namespace linewright::oracles {

// The distance between two convex shapes is convex in where one stands on either, so nested
// one-dimensional searches cannot miss the minimum.
inline constexpr double search_tolerance = 1e-13;  // as a fraction of the shape: 3e-11 in at 300 in

template <typename Function>
double least(const Function& function) {
  return least_by_golden_section(function, 0, 1, search_tolerance);
}

inline double searched_distance(Vec3 point, const Segment3& s) {
  return least([&](double t) { return distance(point, between(s.a, s.b, t)); });
}

inline double searched_distance(const Segment3& first, const Segment3& second) {
  return least([&](double t) { return searched_distance(between(first.a, first.b, t), second); });
}

inline double searched_distance(Vec3 point, const Triangle3& t) {
  // Slices parallel to one side: along these the place on the triangle is linear.
  return least([&](double s) {
    return searched_distance(point, Segment3{between(t.a, t.b, s), between(t.c, t.b, s)});
  });
}

/// The least of a grid of places on both shapes. Never below the true distance, and above it by no
/// more than half a step along each direction.
inline double sampled_distance(const Segment3& segment, const Triangle3& t, int steps) {
  double best = std::numeric_limits<double>::infinity();
  for (int i = 0; i <= steps; ++i) {
    const Vec3 p = between(segment.a, segment.b, double(i) / steps);
    for (int j = 0; j <= steps; ++j)
      for (int k = 0; j + k <= steps; ++k)
        best = std::min(best, distance(p, t.a + (t.b - t.a) * (double(j) / steps) +
                                              (t.c - t.a) * (double(k) / steps)));
  }
  return best;
}

inline double sampling_error(const Segment3& segment, const Triangle3& t, int steps) {
  return (distance(segment.a, segment.b) / 2 + distance(t.a, t.b) + distance(t.a, t.c)) / steps;
}

}  // namespace linewright::oracles
