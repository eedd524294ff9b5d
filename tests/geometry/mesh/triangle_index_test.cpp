#define BOOST_ALLOW_DEPRECATED_HEADERS

#include "geometry/mesh/triangle_index.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <boost/geometry.hpp>
#include <boost/geometry/index/rtree.hpp>
#include <cmath>
#include <iterator>
#include <limits>
#include <set>
#include <utility>
#include <vector>

#include "geometry/mesh/triangle_search.hpp"
#include "oracles/fcl_distance.hpp"
#include "oracles/random_shapes.hpp"

namespace linewright {
namespace {

using oracles::Random;

// What double precision leaves of coordinates of up to 1e3 in.
constexpr double error_in = 1e-9;

double least_distance(const Segment3& segment, const std::vector<Triangle3>& triangles) {
  double least = TriangleIndex::endless;
  for (const Triangle3& triangle : triangles)
    least = std::min(least, nearest(segment, triangle).distance_in);
  return least;
}

double indexed_distance(const TriangleIndex& index, const Segment3& segment) {
  const auto found = index.nearest(segment);
  return found ? found->nearest.distance_in : TriangleIndex::endless;
}

/// Small triangles scattered over a cube.
std::vector<Triangle3> scattered(Random& random, std::size_t count, double half_width,
                                 double size_in) {
  std::vector<Triangle3> triangles;
  while (triangles.size() < count) {
    const Vec3 at = random.point(half_width);
    triangles.push_back(
        {at + random.point(size_in), at + random.point(size_in), at + random.point(size_in)});
  }
  return triangles;
}

Segment3 short_segment(Random& random, double half_width, double length_in) {
  const Vec3 at = random.point(half_width);
  return {at, at + random.direction() * length_in};
}

/// The index says what trying every triangle says, and names a triangle that is that near.
void expect_exact(const std::vector<Triangle3>& triangles, const std::vector<Segment3>& segments) {
  const TriangleIndex index(triangles);
  for (const Segment3& segment : segments) {
    const double least = least_distance(segment, triangles);
    const auto found = index.nearest(segment);
    ASSERT_TRUE(found);
    EXPECT_EQ(found->nearest.distance_in, least);
    EXPECT_EQ(nearest(segment, triangles[found->triangle]).distance_in, least);
  }
}

TEST(TriangleIndex, MeasuresThreeFourFive) {
  // The plate's corner at the origin is the nearest point to (-3, -4, 0) and on.
  const std::vector<Triangle3> plate{{{0, 0, 0}, {10, 0, 0}, {0, 10, 0}}};
  const TriangleIndex index(plate);
  const auto found = index.nearest({{-3, -4, 0}, {-30, -40, 0}});
  ASSERT_TRUE(found);
  EXPECT_DOUBLE_EQ(found->nearest.distance_in, 5);
  EXPECT_EQ(found->nearest.on_first, (Vec3{-3, -4, 0}));
  EXPECT_EQ(found->nearest.on_second, (Vec3{0, 0, 0}));
  EXPECT_EQ(found->triangle, 0U);
}

TEST(TriangleIndex, APiercedTriangleIsAtNoDistance) {
  Random random(1);
  std::vector<Triangle3> triangles = scattered(random, 200, 50, 5);
  const Vec3 inside = between(between(triangles[77].a, triangles[77].b, 0.4), triangles[77].c, 0.3);
  const Vec3 across = cross(triangles[77].b - triangles[77].a, triangles[77].c - triangles[77].a);
  const TriangleIndex index(triangles);
  EXPECT_EQ(indexed_distance(index, {inside - unit(across), inside + unit(across) * 2}), 0);
}

TEST(TriangleIndex, NoTrianglesAreNowhere) {
  const TriangleIndex index({});
  EXPECT_FALSE(index.nearest({{0, 0, 0}, {1, 0, 0}}));
  int visits = 0;
  index.visit_within({{0, 0, 0}, {1, 0, 0}}, TriangleIndex::endless, [&](std::uint32_t, double) {
    ++visits;
    return 0.0;
  });
  EXPECT_EQ(visits, 0);
}

TEST(TriangleIndex, IsExactForEveryCountOfTriangles) {
  Random random(2);
  for (const std::size_t count : {1U, 2U, 7U, 8U, 9U, 15U, 16U, 17U, 63U, 64U, 65U, 129U, 5000U}) {
    SCOPED_TRACE(count);
    std::vector<Segment3> segments;
    for (int i = 0; i < (count > 1000 ? 8 : 20); ++i) {
      segments.push_back(short_segment(random, 60, random.between(0, 30)));
      segments.push_back(short_segment(random, 500, 1));
    }
    expect_exact(scattered(random, count, 50, 4), segments);
  }
}

TEST(TriangleIndex, AgreesWithFcl) {
  Random random(3);
  const std::vector<Triangle3> triangles = scattered(random, 300, 20, 2);
  const TriangleIndex index(triangles);
  for (int i = 0; i < 25; ++i) {
    const Segment3 segment = short_segment(random, 25, 5);
    double least = TriangleIndex::endless;
    for (const Triangle3& triangle : triangles)
      least = std::min(least, oracles::fcl_distance(segment, triangle));
    // FCL works with absolute thresholds: it is the less exact of the two where they touch.
    EXPECT_NEAR(indexed_distance(index, segment), least, 1e-7);
  }
}

/// A mesh of every kind of trouble, about (0, 0, 0), and segments that come near it.
struct Awkward {
  std::vector<Triangle3> triangles;
  std::vector<Segment3> segments;
};

Awkward slivers(Random& random) {
  Awkward made;
  for (int i = 0; i < 400; ++i) {
    const Vec3 from = random.point(100);
    const Vec3 along = random.direction() * 100;
    made.triangles.push_back({from, from + along, from + along + random.direction() * 1e-3});
  }
  for (int i = 0; i < 30; ++i) made.segments.push_back(short_segment(random, 100, 5));
  return made;
}

/// Points, needles, and the same triangle over and over.
Awkward degenerate(Random& random) {
  Awkward made;
  for (int i = 0; i < 100; ++i) {
    const Vec3 a = random.point(20);
    const Vec3 b = random.point(20);
    made.triangles.push_back({a, a, a});
    made.triangles.push_back({a, b, b});
    made.triangles.push_back({a, b, between(a, b, 0.5)});
    for (int copy = 0; copy < 3; ++copy) made.triangles.push_back({a, b, {1, 2, 3}});
  }
  for (int i = 0; i < 30; ++i) {
    made.segments.push_back(short_segment(random, 25, 3));
    made.segments.push_back({made.segments.back().a, made.segments.back().a});
  }
  return made;
}

/// A flat sheet of squares, and segments in its plane, square to it and of next to no length.
Awkward coplanar(Random& random) {
  Awkward made;
  for (int i = 0; i < 20; ++i)
    for (int j = 0; j < 20; ++j) {
      const Vec3 a{double(i), double(j), 0};
      made.triangles.push_back({a, a + Vec3{1, 0, 0}, a + Vec3{1, 1, 0}});
      made.triangles.push_back({a, a + Vec3{1, 1, 0}, a + Vec3{0, 1, 0}});
    }
  for (int i = 0; i < 15; ++i) {
    const Vec3 at{random.between(-5, 25), random.between(-5, 25), 0};
    made.segments.push_back({at, at + Vec3{random.between(-3, 3), random.between(-3, 3), 0}});
    made.segments.push_back({at + Vec3{0, 0, 0.25}, at + Vec3{0, 0, 2}});
    made.segments.push_back({at + Vec3{0, 0, 1e-7}, at + Vec3{2, 0, 1e-7}});
    for (const double length : {0.0, 1e-20, 1e-12})
      made.segments.push_back({at, at + Vec3{length, 0, length}});
  }
  for (const double length : {1e-30, 1e-20, 1e-19})
    made.segments.push_back({{10, 10, 0}, {10, 10, length}});
  return made;
}

/// All about one middle, each a tenth smaller than the last.
Awkward nested(Random& random) {
  Awkward made;
  double size_in = 100;
  for (int i = 0; i < 600; ++i, size_in *= 0.9)
    made.triangles.push_back(
        {random.direction() * size_in, random.direction() * size_in, random.direction() * size_in});
  for (int i = 0; i < 30; ++i)
    made.segments.push_back(short_segment(random, oracles::magnitude(random, -3, 2), 0.1));
  return made;
}

TEST(TriangleIndex, IsExactForAwkwardMeshes) {
  Random random(4);
  for (const auto& make : {slivers, degenerate, coplanar, nested}) {
    const Awkward made = make(random);
    expect_exact(made.triangles, made.segments);
  }
}

TEST(TriangleIndex, IsExactFarFromTheDatum) {
  Random random(5);
  const Vec3 away{1e5, -1e5, 1e5};
  for (const auto& make : {slivers, degenerate, coplanar}) {
    Awkward made = make(random);
    for (Triangle3& t : made.triangles) t = {t.a + away, t.b + away, t.c + away};
    for (Segment3& s : made.segments) s = {s.a + away, s.b + away};
    // One triangle at the datum takes the bounds' precision away.
    made.triangles.push_back({{0, 0, 0}, {1, 0, 0}, {0, 1, 0}});
    expect_exact(made.triangles, made.segments);
  }
}

TEST(TriangleIndex, IsExactWhereTrianglesCrowdEverCloserToOnePlace) {
  // Cuts by area take a few off the outside each time, and leave a tree of great depth.
  std::vector<Triangle3> triangles;
  double x = 1;
  for (int i = 0; i < 60000; ++i) {
    if (i % 8 == 0) x = x < 1e-30 ? 1 : x * 0.97;
    const Vec3 at{i % 2 == 0 ? x : -x, 0, 0};
    triangles.push_back({at, at, at});
  }
  expect_exact(triangles, {{{0, 0, 0}, {0, 0, 0}}, {{0, 0, 1}, {1, 0, 1}}, {{2, 0, 0}, {3, 0, 0}}});
}

TEST(TriangleIndex, BoundsInFloatsStayWithinTheirError) {
  // Nothing nearer than a bound is passed over even where the float bounds are hardly below the
  // distances: parallel sheets a little apart, at the far ends of a large mesh.
  Random random(6);
  const double extent = 1e5;
  for (int i = 0; i < 2000; ++i) {
    const Vec3 at = random.point(extent);
    const Vec3 along = random.direction();
    const Vec3 off = cross(along, random.direction()) * oracles::magnitude(random, -4, 2);
    const double reach = oracles::magnitude(random, 0, 5);
    const Segment3 segment{at, at + along * reach};
    const std::vector<Triangle3> triangles{
        {at + off - along * reach, at + off + along * (2 * reach), at + off * 2},
        {{extent, extent, extent}, {extent, extent, extent}, {-extent, -extent, -extent}}};
    const double least = least_distance(segment, triangles);
    const TriangleIndex index(triangles);
    const auto found = index.nearest(segment, least);
    ASSERT_TRUE(found);
    EXPECT_EQ(found->nearest.distance_in, least);
  }
}

TEST(TriangleIndex, AGuessNeverChangesTheAnswer) {
  Random random(7);
  const std::vector<Triangle3> triangles = scattered(random, 500, 50, 3);
  const TriangleIndex index(triangles);
  for (int i = 0; i < 50; ++i) {
    const Segment3 segment = short_segment(random, 60, 4);
    const double least = least_distance(segment, triangles);
    std::uint32_t farthest = 0;
    for (std::uint32_t k = 0; k < triangles.size(); ++k)
      if (nearest(segment, triangles[k]).distance_in >
          nearest(segment, triangles[farthest]).distance_in)
        farthest = k;
    for (const std::uint32_t guess :
         {farthest, std::uint32_t{0}, index.nearest(segment)->triangle}) {
      EXPECT_EQ(index.nearest(segment, TriangleIndex::endless, guess)->nearest.distance_in, least);
      EXPECT_EQ(index.nearest(segment, least, guess)->nearest.distance_in, least);
      EXPECT_FALSE(index.nearest(segment, least * (1 - 1e-12), guess));
    }
  }
}

TEST(TriangleIndex, FindsWhatIsExactlyAtTheCutOffAndNothingBeyond) {
  const std::vector<Triangle3> plate{{{0, 0, 0}, {10, 0, 0}, {0, 10, 0}}};
  const TriangleIndex index(plate);
  const Segment3 above{{1, 1, 2}, {2, 2, 3}};
  EXPECT_TRUE(index.nearest(above, 2));
  EXPECT_TRUE(index.nearest(above, 2.5));
  EXPECT_FALSE(index.nearest(above, std::nextafter(2.0, 0.0)));
  EXPECT_FALSE(index.nearest(above, 0));
  EXPECT_FALSE(index.nearest(above, -1));
  EXPECT_TRUE(index.nearest({{1, 1, -1}, {1, 1, 1}}, 0));
}

TEST(TriangleIndex, DoesNotDependOnThreads) {
  Random random(8);
  // More than one share of the work.
  const std::vector<Triangle3> triangles = scattered(random, 20000, 50, 1);
  const TriangleIndex one(triangles, 1);
  for (const unsigned threads : {0U, 2U, 5U}) {
    const TriangleIndex several(triangles, threads);
    EXPECT_EQ(several.overhead_bytes(), one.overhead_bytes());
    for (int i = 0; i < 100; ++i) {
      const Segment3 segment = short_segment(random, 60, 4);
      const auto expected = one.nearest(segment);
      const auto found = several.nearest(segment);
      EXPECT_EQ(found->triangle, expected->triangle);
      EXPECT_EQ(found->nearest.distance_in, expected->nearest.distance_in);
    }
  }
}

TEST(TriangleIndex, VisitsEveryTriangleNearerThanTheBound) {
  Random random(9);
  std::vector<Triangle3> triangles = scattered(random, 1500, 20, 2);
  for (const Awkward& more : {slivers(random), degenerate(random)})
    triangles.insert(triangles.end(), more.triangles.begin(), more.triangles.end());
  const TriangleIndex index(triangles);
  for (const double bound : {0.0, 0.1, 2.0, 10.0, 1000.0}) {
    const Segment3 segment = short_segment(random, 20, 4);
    std::multiset<std::uint32_t> visited;
    index.visit_within(segment, bound, [&](std::uint32_t triangle, double given) {
      EXPECT_EQ(given, bound);
      visited.insert(triangle);
      return given;
    });
    std::size_t far = 0;
    for (std::uint32_t i = 0; i < triangles.size(); ++i) {
      EXPECT_LE(visited.count(i), 1U);
      const double away = nearest(segment, triangles[i]).distance_in;
      if (away <= bound) {
        EXPECT_EQ(visited.count(i), 1U) << i << " at " << away;
      }
      if (visited.count(i) == 1 && away > bound + 1e-3) ++far;
    }
    // Slivers bound themselves loosely; nearly all that is far is passed over all the same.
    EXPECT_LT(far, triangles.size() / 50);
  }
}

TEST(TriangleIndex, ARigidMotionLeavesDistancesTheSame) {
  Random random(10);
  const std::vector<Triangle3> triangles = scattered(random, 800, 40, 3);
  const TriangleIndex index(triangles);
  for (int i = 0; i < 8; ++i) {
    const oracles::RigidMotion motion(random);
    std::vector<Triangle3> turned;
    for (const Triangle3& triangle : triangles) turned.push_back(oracles::moved(motion, triangle));
    const TriangleIndex moved_index(turned);
    for (int k = 0; k < 40; ++k) {
      const Segment3 segment = short_segment(random, 45, 4);
      EXPECT_NEAR(indexed_distance(moved_index, oracles::moved(motion, segment)),
                  indexed_distance(index, segment), error_in);
    }
  }
}

TEST(TriangleIndex, TheNearestOfASegmentsPiecesIsTheSegmentsNearest) {
  Random random(11);
  const std::vector<Triangle3> triangles = scattered(random, 800, 40, 3);
  const TriangleIndex index(triangles);
  for (int i = 0; i < 60; ++i) {
    const Segment3 whole = short_segment(random, 45, 30);
    double least = TriangleIndex::endless;
    for (int piece = 0; piece < 7; ++piece)
      least =
          std::min(least, indexed_distance(index, {between(whole.a, whole.b, piece / 7.0),
                                                   between(whole.a, whole.b, (piece + 1) / 7.0)}));
    EXPECT_NEAR(least, indexed_distance(index, whole), error_in);
  }
}

TEST(TriangleIndex, SubdividingChangesNothingAndAddingNeverRaises) {
  Random random(12);
  const std::vector<Triangle3> triangles = scattered(random, 300, 30, 6);
  std::vector<Triangle3> divided;
  for (const auto& [a, b, c] : triangles) {
    const Vec3 ab = between(a, b, 0.5), bc = between(b, c, 0.5), ca = between(c, a, 0.5);
    for (const Triangle3& part : {Triangle3{a, ab, ca}, {ab, b, bc}, {ca, bc, c}, {ab, bc, ca}})
      divided.push_back(part);
  }
  std::vector<Triangle3> more = triangles;
  for (const Triangle3& extra : scattered(random, 300, 30, 6)) more.push_back(extra);
  const TriangleIndex index(triangles), divided_index(divided), more_index(more);
  for (int i = 0; i < 100; ++i) {
    const Segment3 segment = short_segment(random, 35, 4);
    const double away = indexed_distance(index, segment);
    EXPECT_NEAR(indexed_distance(divided_index, segment), away, error_in);
    EXPECT_LE(indexed_distance(more_index, segment), away);
  }
}

// The trap of a fixed number of nearest boxes.

namespace bg = boost::geometry;
using BoxPoint = bg::model::point<double, 3, bg::cs::cartesian>;
using BoostBox = bg::model::box<BoxPoint>;
using Entry = std::pair<BoostBox, std::size_t>;
using BoxTree = bg::index::rtree<Entry, bg::index::rstar<16>>;

BoostBox box_around(Vec3 a, Vec3 b, Vec3 c) {
  return {
      BoxPoint(std::min({a.x, b.x, c.x}), std::min({a.y, b.y, c.y}), std::min({a.z, b.z, c.z})),
      BoxPoint(std::max({a.x, b.x, c.x}), std::max({a.y, b.y, c.y}), std::max({a.z, b.z, c.z}))};
}

/// The least distance to the triangles of the `count` boxes that are nearest to the segment's.
double distance_by_nearest_boxes(const std::vector<Triangle3>& triangles, const Segment3& segment,
                                 unsigned count) {
  std::vector<Entry> entries;
  for (const auto& [a, b, c] : triangles) entries.emplace_back(box_around(a, b, c), entries.size());
  const BoxTree tree(entries);
  std::vector<Entry> found;
  tree.query(bg::index::nearest(box_around(segment.a, segment.b, segment.b), count),
             std::back_inserter(found));
  double least = TriangleIndex::endless;
  for (const Entry& entry : found)
    least = std::min(least, nearest(segment, triangles[entry.second]).distance_in);
  return least;
}

TEST(TriangleIndex, IsNotMisledByBoxesThatHoldTheSegment) {
  // 200 stringers run diagonally past the segment, from one corner of the bay to the next: the box
  // of each holds the segment, yet none is nearer than 7 in. A small bracket stands 0.5 in off the
  // segment: its box does not hold it, and so ranks behind all 200.
  std::vector<Triangle3> triangles;
  for (int i = 0; i < 200; ++i) {
    const double off = 10 + 0.05 * i;
    triangles.push_back({{-1, 2 * off, -1}, {1, -1, 2 * off}, {1, -1, 2 * off + 0.01}});
  }
  triangles.push_back({{-0.1, 0.5, -0.1}, {0.1, 0.5, -0.1}, {0, 0.5, 0.1}});
  const Segment3 segment{{-0.2, 0, 0}, {0.2, 0, 0}};
  const TriangleIndex index(triangles);
  EXPECT_DOUBLE_EQ(indexed_distance(index, segment), 0.5);
  EXPECT_EQ(index.nearest(segment)->triangle, 200U);
  for (const unsigned count : {16U, 64U})
    EXPECT_GT(distance_by_nearest_boxes(triangles, segment, count), 2.0);
  EXPECT_DOUBLE_EQ(distance_by_nearest_boxes(triangles, segment, 201), 0.5);
}

}  // namespace
}  // namespace linewright
