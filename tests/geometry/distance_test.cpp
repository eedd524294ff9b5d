#include "geometry/distance.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>

#include "oracles/fcl_distance.hpp"
#include "oracles/random_shapes.hpp"
#include "oracles/searched_distance.hpp"

namespace linewright {
namespace {

using oracles::Random;
using oracles::RigidMotion;

// The kernels' promise on coordinates up to 300 in.
constexpr double promised_in = 1e-9;
// A few roundings of coordinates of 300 in: for figures that can be checked by hand.
constexpr double rounding_in = 1e-12;

/// The reported points lie where the reported distance says.
void expect_attained(const Nearest& result) {
  EXPECT_NEAR(distance(result.on_first, result.on_second), result.distance_in, 1e-10);
}

void expect_on(Vec3 point, const Segment3& segment) {
  EXPECT_NEAR(distance(segment.a, point) + distance(point, segment.b),
              distance(segment.a, segment.b), promised_in);
}

TEST(PointToSegment, BesideTheMiddleIsThePerpendicular) {
  const Nearest result = nearest(Vec3{3, 4, 0}, Segment3{{0, 0, 0}, {10, 0, 0}});
  EXPECT_DOUBLE_EQ(result.distance_in, 4);
  EXPECT_EQ(result.on_first, (Vec3{3, 4, 0}));
  EXPECT_EQ(result.on_second, (Vec3{3, 0, 0}));
}

TEST(PointToSegment, PastAnEndIsTheEnd) {
  const Nearest result = nearest(Vec3{11, 2, 2}, Segment3{{0, 0, 0}, {10, 0, 0}});
  EXPECT_DOUBLE_EQ(result.distance_in, 3);  // 1-2-2-3
  EXPECT_EQ(result.on_second, (Vec3{10, 0, 0}));
}

TEST(PointToSegment, SegmentOfNoLengthIsAPoint) {
  EXPECT_DOUBLE_EQ(nearest(Vec3{3, 4, 0}, Segment3{{0, 0, 0}, {0, 0, 0}}).distance_in, 5);
}

TEST(SegmentToSegment, SkewSegmentsMeetAtTheirCommonNormal) {
  const Nearest result = nearest(Segment3{{-1, 0, 0}, {1, 0, 0}}, Segment3{{0, -1, 3}, {0, 1, 3}});
  EXPECT_DOUBLE_EQ(result.distance_in, 3);
  EXPECT_EQ(result.on_first, (Vec3{0, 0, 0}));
  EXPECT_EQ(result.on_second, (Vec3{0, 0, 3}));
}

TEST(SegmentToSegment, CrossingSegmentsAreAtZero) {
  const Nearest result = nearest(Segment3{{0, 0, 0}, {2, 2, 2}}, Segment3{{0, 2, 1}, {2, 0, 1}});
  EXPECT_NEAR(result.distance_in, 0, rounding_in);
  EXPECT_NEAR(distance(result.on_first, {1, 1, 1}), 0, rounding_in);
}

TEST(SegmentToSegment, EndToEndIsThreeFourFive) {
  EXPECT_DOUBLE_EQ(
      nearest(Segment3{{-9, 0, 0}, {0, 0, 0}}, Segment3{{3, 4, 0}, {3, 9, 0}}).distance_in, 5);
}

TEST(SegmentToSegment, ParallelSegmentsSideBySide) {
  EXPECT_DOUBLE_EQ(
      nearest(Segment3{{0, 0, 0}, {10, 0, 0}}, Segment3{{4, 3, 4}, {20, 3, 4}}).distance_in, 5);
}

TEST(SegmentToSegment, ParallelSegmentsPastEachOther) {
  EXPECT_DOUBLE_EQ(
      nearest(Segment3{{0, 0, 0}, {10, 0, 0}}, Segment3{{30, 2, 2}, {11, 2, 2}}).distance_in, 3);
}

TEST(SegmentToSegment, InLineWithAGapAndOverlapping) {
  const Segment3 first{{0, 0, 0}, {10, 0, 0}};
  EXPECT_DOUBLE_EQ(nearest(first, Segment3{{12, 0, 0}, {20, 0, 0}}).distance_in, 2);
  EXPECT_DOUBLE_EQ(nearest(first, Segment3{{5, 0, 0}, {20, 0, 0}}).distance_in, 0);
  EXPECT_DOUBLE_EQ(nearest(first, Segment3{{-5, 0, 0}, {20, 0, 0}}).distance_in, 0);
}

TEST(SegmentToSegment, TwoSegmentsOfNoLengthArePoints) {
  EXPECT_DOUBLE_EQ(
      nearest(Segment3{{0, 0, 0}, {0, 0, 0}}, Segment3{{1, 2, 2}, {1, 2, 2}}).distance_in, 3);
}

TEST(SegmentToSegment, NearlyParallelSegmentsFarFromTheOriginKeepTheirGap) {
  // They cross in plan at mid-length at an angle of 1e-7 and are 0.25 in apart there.
  const Segment3 first{{100, 200, 50}, {300, 200, 50}};
  const Segment3 second{{100, 200 - 1e-5, 50.25}, {300, 200 + 1e-5, 50.25}};
  EXPECT_NEAR(nearest(first, second).distance_in, 0.25, promised_in);
  const Segment3 crossing{{100, 200 - 1e-5, 50}, {300, 200 + 1e-5, 50}};
  EXPECT_NEAR(nearest(first, crossing).distance_in, 0, promised_in);
}

const Triangle3 floor_triangle{{0, 0, 0}, {8, 0, 0}, {0, 6, 0}};

TEST(PointToTriangle, OverTheFaceIsTheHeight) {
  const Nearest result = nearest(Vec3{2, 2, 5}, floor_triangle);
  EXPECT_DOUBLE_EQ(result.distance_in, 5);
  EXPECT_NEAR(distance(result.on_second, {2, 2, 0}), 0, rounding_in);
}

TEST(PointToTriangle, BesideTheLongEdge) {
  // The long edge runs 8-6-10; (4, 3) is its middle and (0.6, 0.8, 0) its normal.
  const Nearest result = nearest(Vec3{4 + 3 * 0.6, 3 + 3 * 0.8, 4}, floor_triangle);
  EXPECT_NEAR(result.distance_in, 5, rounding_in);
  EXPECT_NEAR(distance(result.on_second, {4, 3, 0}), 0, rounding_in);
}

TEST(PointToTriangle, PastACorner) {
  EXPECT_DOUBLE_EQ(nearest(Vec3{9, -2, 2}, floor_triangle).distance_in, 3);
}

TEST(PointToTriangle, OnTheFaceIsAtZero) {
  EXPECT_NEAR(nearest(Vec3{2, 2, 0}, floor_triangle).distance_in, 0, rounding_in);
}

TEST(PointToTriangle, NoAreaFallsBackToTheEdges) {
  const Triangle3 line{{0, 0, 0}, {4, 0, 0}, {10, 0, 0}};
  EXPECT_DOUBLE_EQ(nearest(Vec3{7, 3, 4}, line).distance_in, 5);
  const Triangle3 point{{1, 2, 2}, {1, 2, 2}, {1, 2, 2}};
  EXPECT_DOUBLE_EQ(nearest(Vec3{0, 0, 0}, point).distance_in, 3);
}

TEST(SegmentToTriangle, PiercingIsZeroAtThePiercingPoint) {
  const Nearest result = nearest(Segment3{{2, 2, -3}, {2, 2, 1}}, floor_triangle);
  EXPECT_EQ(result.distance_in, 0);
  EXPECT_NEAR(distance(result.on_first, {2, 2, 0}), 0, rounding_in);
  EXPECT_EQ(result.on_first, result.on_second);
}

TEST(SegmentToTriangle, StoppingShortIsTheEndsHeight) {
  const Nearest result = nearest(Segment3{{2, 2, 9}, {2, 2, 1}}, floor_triangle);
  EXPECT_DOUBLE_EQ(result.distance_in, 1);
  EXPECT_EQ(result.on_first, (Vec3{2, 2, 1}));
}

TEST(SegmentToTriangle, ParallelOverTheFace) {
  EXPECT_DOUBLE_EQ(nearest(Segment3{{-9, 2, 3}, {20, 2, 3}}, floor_triangle).distance_in, 3);
}

TEST(SegmentToTriangle, PassingBesideAnEdge) {
  EXPECT_DOUBLE_EQ(nearest(Segment3{{4, -3, -5}, {4, -3, 5}}, floor_triangle).distance_in, 3);
}

TEST(SegmentToTriangle, LyingInThePlane) {
  EXPECT_DOUBLE_EQ(nearest(Segment3{{1, 1, 0}, {2, 2, 0}}, floor_triangle).distance_in, 0);
  EXPECT_DOUBLE_EQ(nearest(Segment3{{-1, 1, 0}, {20, 1, 0}}, floor_triangle).distance_in, 0);
  EXPECT_DOUBLE_EQ(nearest(Segment3{{9, -2, 0}, {9, 2, 0}}, floor_triangle).distance_in, 1);
}

TEST(SegmentToTriangle, TouchingACornerOrAnEdgeIsZero) {
  EXPECT_NEAR(nearest(Segment3{{8, 0, -1}, {8, 0, 1}}, floor_triangle).distance_in, 0, rounding_in);
  EXPECT_NEAR(nearest(Segment3{{4, 3, -1}, {4, 3, 1}}, floor_triangle).distance_in, 0, rounding_in);
}

TEST(SegmentToTriangle, ThinTriangleIsStillPierced) {
  // 200 in long, 1e-6 in high in its middle; pierced half-way up, obliquely.
  const Triangle3 thin{{100, 50, 20}, {300, 50, 20}, {200, 50 + 1e-6, 20}};
  const Segment3 through{{190, 40 + 0.5e-6, 10}, {210, 60 + 0.5e-6, 30}};
  EXPECT_NEAR(nearest(through, thin).distance_in, 0, promised_in);
}

TEST(Distances, AgreeWithFclOnRandomShapes) {
  Random random(20240501);
  for (int i = 0; i < 20000; ++i) {
    const Segment3 first = oracles::random_segment(random);
    const Segment3 second = oracles::random_segment(random);
    const Triangle3 triangle = oracles::random_triangle(random);
    const Nearest between_segments = nearest(first, second);
    const Nearest to_triangle = nearest(first, triangle);
    ASSERT_NEAR(between_segments.distance_in, oracles::fcl_distance(first, second), promised_in);
    ASSERT_NEAR(to_triangle.distance_in, oracles::fcl_distance(first, triangle), promised_in);
    expect_attained(between_segments);
    expect_attained(to_triangle);
    expect_on(between_segments.on_first, first);
    expect_on(between_segments.on_second, second);
    expect_on(to_triangle.on_first, first);
  }
}

TEST(Distances, AgreeWithFclOnShapesInLineInPlaneAndOfNoSize) {
  Random random(7);
  for (int i = 0; i < 20000; ++i) {
    const Segment3 first = oracles::grid_segment(random);
    const Segment3 second = oracles::grid_segment(random);
    const Triangle3 triangle = oracles::grid_triangle(random);
    ASSERT_NEAR(nearest(first, second).distance_in, oracles::fcl_distance(first, second),
                promised_in);
    ASSERT_NEAR(nearest(first, triangle).distance_in, oracles::fcl_distance(first, triangle),
                promised_in);
  }
}

// The sides of the edges, by which the edges to look at are chosen, are known to rounding only: a
// segment may leave all edges but the one that it goes through on its inner side.
TEST(Distances, AreNothingWhereASegmentGoesThroughAnEdge) {
  Random random(19);
  for (int i = 0; i < 20000; ++i) {
    const Triangle3 triangle = oracles::random_triangle(random);
    const Vec3 normal = cross(triangle.b - triangle.a, triangle.c - triangle.a);
    if (norm(normal) < 1e-3) continue;
    const Vec3 edge = unit(triangle.b - triangle.a);
    const double share = random.whole(0, 3) == 0 ? 0 : random.between(0, 1);
    const Vec3 met = between(triangle.a, triangle.b, share);
    const Vec3 way = unit(normal) * random.between(0.1, 5) + edge * random.between(-5, 5);
    const Segment3 through{met + way, met - way * random.between(0.1, 3)};
    ASSERT_NEAR(nearest(through, triangle).distance_in, 0, promised_in);
    const Triangle3 turned{triangle.b, triangle.c, triangle.a};
    ASSERT_NEAR(nearest(through, turned).distance_in, 0, promised_in);
  }
}

TEST(Distances, AgreeWithSearchOnNearlyParallelSegments) {
  Random random(11);
  for (int i = 0; i < 1000; ++i) {
    const Segment3 first = oracles::random_segment(random);
    const Segment3 second = oracles::nearly_parallel(random, first);
    ASSERT_NEAR(nearest(first, second).distance_in, oracles::searched_distance(first, second),
                promised_in);
  }
}

TEST(Distances, AgreeWithSearchFromPointsToThinTriangles) {
  Random random(13);
  for (int i = 0; i < 1000; ++i) {
    const Triangle3 thin = oracles::thin_triangle(random);
    const Vec3 over = oracles::point_of(random, thin);
    const Vec3 point = over + random.direction() * oracles::magnitude(random, -9, 2);
    const Nearest result = nearest(point, thin);
    ASSERT_NEAR(result.distance_in, oracles::searched_distance(point, thin), promised_in);
    expect_attained(result);
  }
}

TEST(Distances, SegmentsThroughThinTrianglesAreAtZero) {
  Random random(17);
  for (int i = 0; i < 5000; ++i) {
    const Triangle3 thin = oracles::thin_triangle(random);
    const Vec3 inside = oracles::point_of(random, thin);
    const Vec3 along = random.direction() * random.between(1, 100);
    ASSERT_NEAR(nearest(Segment3{inside - along, inside + along}, thin).distance_in, 0,
                promised_in);
  }
}

TEST(Distances, LieWithinTheErrorOfPlainSampling) {
  Random random(19);
  constexpr int steps = 24;
  for (int i = 0; i < 200; ++i) {
    const Segment3 segment = oracles::random_segment(random);
    const Triangle3 triangle = oracles::random_triangle(random);
    const double exact_in = nearest(segment, triangle).distance_in;
    const double sampled_in = oracles::sampled_distance(segment, triangle, steps);
    ASSERT_LE(exact_in, sampled_in + promised_in);
    ASSERT_GE(exact_in, sampled_in - oracles::sampling_error(segment, triangle, steps));
  }
}

TEST(Distances, DoNotChangeUnderRigidMotion) {
  Random random(23);
  for (int i = 0; i < 5000; ++i) {
    const RigidMotion motion(random);
    const bool thin = i % 2 == 0;
    const Segment3 first = oracles::random_segment(random);
    const Segment3 second =
        thin ? oracles::nearly_parallel(random, first) : oracles::random_segment(random);
    const Triangle3 triangle =
        thin ? oracles::thin_triangle(random) : oracles::random_triangle(random);
    ASSERT_NEAR(nearest(first, second).distance_in,
                nearest(oracles::moved(motion, first), oracles::moved(motion, second)).distance_in,
                promised_in);
    ASSERT_NEAR(
        nearest(first, triangle).distance_in,
        nearest(oracles::moved(motion, first), oracles::moved(motion, triangle)).distance_in,
        promised_in);
  }
}

TEST(Distances, AreTheSameFromEitherSide) {
  Random random(29);
  for (int i = 0; i < 5000; ++i) {
    const Segment3 first = oracles::random_segment(random);
    const Segment3 second =
        i % 2 == 0 ? oracles::nearly_parallel(random, first) : oracles::random_segment(random);
    const Segment3 reversed{second.b, second.a};
    ASSERT_NEAR(nearest(first, second).distance_in, nearest(reversed, first).distance_in,
                promised_in);
  }
}

TEST(Distances, OfHalvesOfASegmentHaveTheWholesMinimum) {
  Random random(31);
  for (int i = 0; i < 5000; ++i) {
    const Segment3 whole = oracles::random_segment(random);
    const Vec3 cut = between(whole.a, whole.b, random.between(0, 1));
    const Triangle3 triangle =
        i % 2 == 0 ? oracles::thin_triangle(random) : oracles::random_triangle(random);
    const double halves_in = std::min(nearest(Segment3{whole.a, cut}, triangle).distance_in,
                                      nearest(Segment3{cut, whole.b}, triangle).distance_in);
    ASSERT_NEAR(halves_in, nearest(whole, triangle).distance_in, promised_in);
  }
}

TEST(Distances, OfPartsOfATriangleHaveTheWholesMinimum) {
  Random random(37);
  for (int i = 0; i < 5000; ++i) {
    const Segment3 segment = oracles::random_segment(random);
    const Triangle3 t = oracles::random_triangle(random);
    const Vec3 inside = (t.a * 2 + t.b + t.c) / 4;
    const double parts_in = std::min({nearest(segment, Triangle3{t.a, t.b, inside}).distance_in,
                                      nearest(segment, Triangle3{t.b, t.c, inside}).distance_in,
                                      nearest(segment, Triangle3{t.c, t.a, inside}).distance_in});
    ASSERT_NEAR(parts_in, nearest(segment, t).distance_in, promised_in);
  }
}

}  // namespace
}  // namespace linewright
