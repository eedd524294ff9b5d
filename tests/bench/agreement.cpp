// Compares the distance engine with two libraries that share no code with it, on random and on
// degenerate triangles, and prints the largest differences. Ends with 1 where one is over 1e-9 in.

#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/intersections.h>
#include <CGAL/squared_distance_3.h>

#include <cmath>
#include <cstdio>
#include <random>

#include "bench/peer.hpp"
#include "geometry/mesh/triangle_index.hpp"

namespace linewright::bench {
namespace {

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;

Kernel::Point_3 point(Vec3 at) {
  return {at.x, at.y, at.z};
}

/// The library has no distance from a segment to a triangle; its distances between points, segments
/// and triangles make one.
double cgal_distance(const Segment3& segment, const Triangle3& triangle) {
  const Kernel::Point_3 p = point(segment.a);
  const Kernel::Point_3 q = point(segment.b);
  const Kernel::Segment_3 asked(p, q);
  const Kernel::Point_3 a = point(triangle.a);
  const Kernel::Point_3 b = point(triangle.b);
  const Kernel::Point_3 c = point(triangle.c);
  double squared = std::min({CGAL::squared_distance(asked, Kernel::Segment_3(a, b)),
                             CGAL::squared_distance(asked, Kernel::Segment_3(b, c)),
                             CGAL::squared_distance(asked, Kernel::Segment_3(c, a))});
  const Kernel::Triangle_3 face(a, b, c);
  if (face.is_degenerate()) return std::sqrt(squared);
  if (!asked.is_degenerate() && CGAL::do_intersect(asked, face)) return 0;
  squared = std::min({squared, CGAL::squared_distance(p, face), CGAL::squared_distance(q, face)});
  return std::sqrt(squared);
}

class Soup {
 public:
  explicit Soup(unsigned seed) : random_(seed) {}

  double number(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }

  Vec3 place() { return {number(150, 250), number(-14, 14), number(0, 30)}; }

  Vec3 near(Vec3 at, double by) {
    return at + Vec3{number(-by, by), number(-by, by), number(-by, by)};
  }

  Triangle3 triangle() {
    const Vec3 a = place();
    return {a, near(a, 3), near(a, 3)};
  }

  /// A point, a needle, one side, or a thin sliver.
  Triangle3 degenerate(int kind) {
    const Vec3 a = place();
    const Vec3 b = near(a, 5);
    switch (kind % 4) {
      case 0:
        return {a, a, a};
      case 1:
        return {a, b, a};
      case 2:
        return {a, b, between(a, b, 0.5)};
      default:
        return {a, b, near(between(a, b, 0.4), 1e-5)};
    }
  }

  Segment3 segment() {
    const Vec3 a = place();
    return {a, near(a, number(0, 8))};
  }

 private:
  std::mt19937_64 random_;
};

/// Largest differences of the engine from both libraries.
bool compare(const char* name, const std::vector<Triangle3>& triangles, Soup& soup) {
  const TriangleIndex index(triangles);
  const std::unique_ptr<Peer> fcl = make_fcl(triangles, 0);
  double from_cgal = 0;
  double from_fcl = 0;
  for (int i = 0; i < 500; ++i) {
    const Segment3 segment = soup.segment();
    const double own = index.nearest(segment)->nearest.distance_in;
    double least = TriangleIndex::endless;
    for (const Triangle3& triangle : triangles)
      least = std::min(least, cgal_distance(segment, triangle));
    from_cgal = std::max(from_cgal, std::abs(own - least));
    from_fcl = std::max(from_fcl, std::abs(own - fcl->distance_in(segment, true)));
  }
  std::printf("%-28s %10.1e %10.1e\n", name, from_cgal, from_fcl);
  return std::max(from_cgal, from_fcl) <= 1e-9;
}

}  // namespace
}  // namespace linewright::bench

int main() {
  using namespace linewright::bench;
  Soup soup(31);
  std::vector<linewright::Triangle3> plain;
  std::vector<linewright::Triangle3> mixed;
  std::vector<linewright::Triangle3> degenerate;
  for (int i = 0; i < 3000; ++i) {
    plain.push_back(soup.triangle());
    degenerate.push_back(soup.degenerate(i));
    mixed.push_back(i % 2 == 0 ? plain.back() : degenerate.back());
  }
  std::printf("%-28s %10s %10s\n", "largest difference in in", "CGAL", "FCL");
  const bool random = compare("3,000 random triangles", plain, soup);
  const bool half = compare("half of them degenerate", mixed, soup);
  const bool all = compare("all of them degenerate", degenerate, soup);
  return random && half && all ? 0 : 1;
}
