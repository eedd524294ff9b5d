#include "geometry/structure/obstacles.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

#include "oracles/fcl_distance.hpp"
#include "oracles/random_shapes.hpp"

namespace linewright {
namespace {

using oracles::Random;

TEST(SwollenObstacle, DistanceIsToItsSurface) {
  Obstacle obstacle;
  obstacle.shape = {{0, 0, 0}, {8, 0, 0}, {0, 6, 0}};
  obstacle.radius_in = 0.5;
  EXPECT_DOUBLE_EQ(nearest(Vec3{2, 2, 3}, obstacle).distance_in, 2.5);
  EXPECT_DOUBLE_EQ(nearest(Segment3{{2, 2, -1}, {2, 2, 1}}, obstacle).distance_in, -0.5);
}

TEST(SwollenObstacle, ASegmentLeavesTheThirdCornerOut) {
  Obstacle obstacle;
  obstacle.shape = {{0, 0, 0}, {10, 0, 0}, {10, 0, 0}};
  obstacle.is_segment = true;
  obstacle.radius_in = 1;
  EXPECT_DOUBLE_EQ(nearest(Vec3{5, 3, 4}, obstacle).distance_in, 4);
  EXPECT_DOUBLE_EQ(nearest(Segment3{{0, 3, 4}, {9, 3, 4}}, obstacle).distance_in, 4);
}

/// A right-angled triangle of 8 by 6 in BL and WL, through all stations from 10 to 14.
Obstacle block() {
  Obstacle obstacle;
  obstacle.shape = {{10, 0, 0}, {14, 8, 0}, {14, 0, 6}};
  obstacle.is_slab = true;
  return obstacle;
}

TEST(SlabObstacle, IsMeasuredFromAllSides) {
  EXPECT_DOUBLE_EQ(nearest(Vec3{7, 2, 2}, block()).distance_in, 3);
  EXPECT_DOUBLE_EQ(nearest(Vec3{19, 2, 2}, block()).distance_in, 5);
  EXPECT_DOUBLE_EQ(nearest(Vec3{12, 2, -4}, block()).distance_in, 4);
  // 2.4 in from the square corner to the slope, whose normal is 3-4-5: twice that is as far beyond.
  EXPECT_NEAR(nearest(Vec3{12, 5.76, 7.68}, block()).distance_in, 9.6 - 4.8, 1e-12);
  EXPECT_DOUBLE_EQ(nearest(Vec3{7, -4, 2}, block()).distance_in, 5);
}

TEST(SlabObstacle, IsSolid) {
  EXPECT_EQ(nearest(Vec3{12, 2, 2}, block()).distance_in, 0);
  EXPECT_EQ(nearest(Segment3{{11, 2, 2}, {13, 2, 3}}, block()).distance_in, 0);
  EXPECT_EQ(nearest(Segment3{{12, -9, 2}, {12, 9, 2}}, block()).distance_in, 0);
  EXPECT_EQ(nearest(Segment3{{0, 2, 2}, {20, 2, 2}}, block()).distance_in, 0);
}

TEST(SlabObstacle, TellsWhereALineBesideItIsNearest) {
  const Nearest found = nearest(Segment3{{11, 2, -3}, {13, 4, -2}}, block());
  EXPECT_DOUBLE_EQ(found.distance_in, 2);
  EXPECT_EQ(found.on_first, (Vec3{13, 4, -2}));
  EXPECT_EQ(found.on_second, (Vec3{13, 4, 0}));
}

TEST(SlabObstacle, OfASegmentIsAStrip) {
  Obstacle strip = block();
  strip.shape = {{10, 0, 0}, {14, 8, 0}, {14, 8, 0}};
  strip.is_segment = true;
  EXPECT_DOUBLE_EQ(nearest(Vec3{12, 2, 2}, strip).distance_in, 2);
  EXPECT_DOUBLE_EQ(nearest(Segment3{{0, 2, 1}, {20, 2, 1}}, strip).distance_in, 1);
  EXPECT_DOUBLE_EQ(nearest(Vec3{7, 4, 4}, strip).distance_in, 5);
}

TEST(SlabObstacle, OfNoThicknessIsItsTriangle) {
  Obstacle thin = block();
  thin.shape = {{10, 0, 0}, {10, 8, 0}, {10, 0, 6}};
  EXPECT_DOUBLE_EQ(nearest(Segment3{{7, 2, 2}, {9, 2, 2}}, thin).distance_in, 1);
  EXPECT_EQ(nearest(Segment3{{7, 2, 2}, {19, 2, 2}}, thin).distance_in, 0);
  EXPECT_DOUBLE_EQ(nearest(Segment3{{10, 2, -2}, {10, 3, -1}}, thin).distance_in, 1);
}

bool inside_block(Vec3 p) {
  return p.x >= 10 && p.x <= 14 && p.y >= 0 && p.z >= 0 && p.y / 8 + p.z / 6 <= 1;
}

/// The block's two ends and three sides, as triangles.
std::vector<Triangle3> surface_of_block() {
  const auto at = [](double fs, int corner) {
    return Vec3{fs, corner % 3 == 1 ? 8.0 : 0.0, corner % 3 == 2 ? 6.0 : 0.0};
  };
  std::vector<Triangle3> surface{{at(10, 0), at(10, 1), at(10, 2)},
                                 {at(14, 0), at(14, 1), at(14, 2)}};
  for (int corner = 0; corner < 3; ++corner) {
    surface.push_back({at(10, corner), at(10, corner + 1), at(14, corner)});
    surface.push_back({at(14, corner), at(14, corner + 1), at(10, corner + 1)});
  }
  return surface;
}

TEST(SlabObstacle, AgreesWithFclOnItsSurfaceAndIsZeroInside) {
  Random random(239);
  const std::vector<Triangle3> surface = surface_of_block();
  int within = 0;
  for (int i = 0; i < 5000; ++i) {
    const Vec3 from = Vec3{12, 3, 2} + random.point(8);
    const Segment3 segment{from, from + random.point(oracles::magnitude(random, -3, 1))};
    double expected_in = std::numeric_limits<double>::infinity();
    for (const Triangle3& triangle : surface)
      expected_in = std::min(expected_in, oracles::fcl_distance(segment, triangle));
    if (inside_block(segment.a) || inside_block(segment.b)) {
      expected_in = 0;
      ++within;
    }
    const Nearest found = nearest(segment, block());
    ASSERT_NEAR(found.distance_in, expected_in, 1e-9);
    ASSERT_NEAR(distance(found.on_first, found.on_second), found.distance_in, 1e-9);
    ASSERT_NEAR(nearest(found.on_first, segment).distance_in, 0, 1e-9);
    ASSERT_NEAR(nearest(found.on_second, block()).distance_in, 0, 1e-9);
  }
  EXPECT_GT(within, 100);
}

/// A frame with a hole, a channel, a box and a bellcrank.
Structure small_structure() {
  Structure structure;
  Frame frame;
  frame.name = "F4";
  frame.plane = at_station(190);
  frame.thickness_in = 0.032;
  frame.outline = {{-14, 0}, {14, 0}, {12, 26}, {-12, 26}};
  frame.holes.resize(1);
  frame.holes[0].shape = Circle{{-8, 14}, 0.75};
  structure.frames = {frame};
  Channel channel;
  channel.path = {{150, -12, 14}, {230, -12, 14}};
  channel.section = {{0, 0}, {0, 1}, {0.6, 1}, {0.6, 0.5}};
  channel.thickness_in = 0.025;
  structure.channels = {channel};
  structure.solids.resize(1);
  structure.solids[0].shape = Box{{160, -4, 2}, {170, 4, 9}};
  Mover mover;
  mover.name = "elevator-bellcrank";
  mover.pivot = {205, 0, 10};
  mover.axis = {0, 1, 0};
  mover.points = {{205, 0, 14}, {205, 0, 6}};
  mover.radius_in = 0.4;
  mover.sweep_from_deg = -28;
  mover.sweep_to_deg = 24;
  structure.movers = {mover};
  return structure;
}

TEST(Obstacles, FindPartsByName) {
  const Obstacles obstacles(small_structure());
  EXPECT_EQ(obstacles.find_part("F4"), 0);
  EXPECT_EQ(obstacles.find_part("elevator-bellcrank"), 3);
  EXPECT_EQ(obstacles.find_part("F5"), std::nullopt);
}

TEST(Obstacles, OfNothingAreEmptyAndCanBeVisited) {
  const Obstacles obstacles{Structure{}};
  EXPECT_TRUE(obstacles.all().empty());
  obstacles.visit({{-1e9, -1e9, -1e9}, {1e9, 1e9, 1e9}},
                  [](const Obstacle&) { ADD_FAILURE() << "there is nothing to visit"; });
}

bool meets(const Obstacle& obstacle, const Bounds& bounds) {
  const auto overlap = [&](auto coordinate) {
    const double a = coordinate(obstacle.shape.a), b = coordinate(obstacle.shape.b),
                 c = coordinate(obstacle.shape.c);
    return std::min({a, b, c}) - obstacle.radius_in <= coordinate(bounds.max) &&
           std::max({a, b, c}) + obstacle.radius_in >= coordinate(bounds.min);
  };
  return overlap([](Vec3 p) { return p.x; }) && overlap([](Vec3 p) { return p.y; }) &&
         overlap([](Vec3 p) { return p.z; });
}

TEST(Obstacles, VisitFindsWhatALoopOverAllBoxesFindsInTheSameOrder) {
  Random random(227);
  const Obstacles obstacles(small_structure());
  std::size_t found = 0;
  for (int i = 0; i < 500; ++i) {
    const Vec3 middle = Vec3{190, 0, 12} + random.point(40);
    const double half_in = oracles::magnitude(random, -2, 1.5);
    const Bounds bounds{middle - Vec3{half_in, half_in, half_in},
                        middle + Vec3{half_in, half_in, half_in}};
    std::vector<const Obstacle*> expected;
    for (const Obstacle& obstacle : obstacles.all())
      if (meets(obstacle, bounds)) expected.push_back(&obstacle);
    std::vector<const Obstacle*> visited;
    obstacles.visit(bounds, [&](const Obstacle& obstacle) { visited.push_back(&obstacle); });
    ASSERT_EQ(visited, expected);
    found += expected.size();
  }
  EXPECT_GT(found, 500u);
}

}  // namespace
}  // namespace linewright
