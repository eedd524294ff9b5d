#include "geometry/obstacles.hpp"

#include <gtest/gtest.h>

#include <algorithm>

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

/// A frame with a hole, a channel, a box and a bellcrank.
Structure small_structure() {
  Structure structure;
  Frame frame;
  frame.name = "F4";
  frame.station = 190;
  frame.thickness = 0.032;
  frame.outline = {{-14, 0}, {14, 0}, {12, 26}, {-12, 26}};
  frame.holes.resize(1);
  frame.holes[0].shape = Circle{{-8, 14}, 0.75};
  structure.frames = {frame};
  Channel channel;
  channel.path = {{150, -12, 14}, {230, -12, 14}};
  channel.section = {{0, 0}, {0, 1}, {0.6, 1}, {0.6, 0.5}};
  channel.thickness = 0.025;
  structure.channels = {channel};
  structure.solids.resize(1);
  structure.solids[0].shape = Box{{160, -4, 2}, {170, 4, 9}};
  Mover mover;
  mover.name = "elevator-bellcrank";
  mover.pivot = {205, 0, 10};
  mover.axis = {0, 1, 0};
  mover.points = {{205, 0, 14}, {205, 0, 6}};
  mover.radius = 0.4;
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
  }
}

}  // namespace
}  // namespace linewright
