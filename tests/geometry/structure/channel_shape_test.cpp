// A section carried round corners. The channel is an angle: a flange 0.6 in up and one 0.75 in to
// the right, as seen looking forward along its first leg.

#include "geometry/structure/channel_shape.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "geometry/structure/obstacles.hpp"
#include "oracles/random_path.hpp"

namespace linewright {
namespace {

Channel angle(const std::vector<Vec3>& path) {
  Channel channel;
  channel.name = "C";
  channel.path = path;
  channel.section = {{0, 0.6}, {0, 0}, {0.75, 0}};
  channel.thickness_in = 0.02;
  return channel;
}

Obstacles alone(const Channel& channel) {
  Structure structure;
  structure.channels = {channel};
  return Obstacles(structure);
}

double to_surface_in(Vec3 place, const Obstacles& obstacles) {
  double least = 1e9;
  for (const Obstacle& obstacle : obstacles.all())
    least = std::min(least, nearest(place, obstacle).distance_in);
  return least;
}

double size(const ChannelWall& wall) {
  const auto& [a, b, c, d] = wall.corners;
  return (norm(cross(b - a, c - a)) + norm(cross(c - a, d - a))) / 2;
}

TEST(ChannelShape, RoundACornerKeepsBothFlanges) {
  // Aft along FS, then to the right along BL at FS 12.5.
  const Obstacles corner = alone(angle({{0, 0, 10}, {12.5, 0, 10}, {12.5, 10, 10}}));
  // The upright one goes on at FS 12.5, the level one turns on the inside: FS 11.75 to 12.5.
  EXPECT_NEAR(to_surface_in({12.5, 6, 10.3}, corner), -0.01, 1e-12);
  EXPECT_NEAR(to_surface_in({12, 6, 10}, corner), -0.01, 1e-12);
  EXPECT_NEAR(to_surface_in({11.5, 6, 10}, corner), 0.25 - 0.01, 1e-12);
  EXPECT_NEAR(to_surface_in({13, 6, 10}, corner), 0.5 - 0.01, 1e-12);
}

TEST(ChannelShape, IsCutInThePlaneThatHalvesTheCorner) {
  const ChannelShape shape = channel_shape(angle({{0, 0, 10}, {12.5, 0, 10}, {12.5, 10, 10}}));
  ASSERT_EQ(shape.walls.size(), 4u);
  // 12.5 by 0.6; 0.75 wide between 12.5 and 11.75; and the same on a leg of 10.
  EXPECT_NEAR(size(shape.walls[0]), 12.5 * 0.6, 1e-12);
  EXPECT_NEAR(size(shape.walls[1]), 0.75 * (12.5 + 11.75) / 2, 1e-12);
  EXPECT_NEAR(size(shape.walls[2]), 10 * 0.6, 1e-12);
  EXPECT_NEAR(size(shape.walls[3]), 0.75 * (10 + 9.25) / 2, 1e-12);
  // The inner long edge turns at FS 11.75, BL 0.75.
  EXPECT_NEAR(distance(shape.edges[2].b, {11.75, 0.75, 10}), 0, 1e-12);
  EXPECT_NEAR(distance(shape.edges[3].a, {11.75, 0.75, 10}), 0, 1e-12);
}

TEST(ChannelShape, OfASlantedChannelIsItsSectionSquareToIt) {
  // 3-4-5: a leg that runs 4 aft to 3 right. Its level flange is 0.75 in wide square to it.
  const ChannelShape shape = channel_shape(angle({{0, 0, 10}, {40, 30, 10}}));
  ASSERT_EQ(shape.walls.size(), 2u);
  EXPECT_NEAR(size(shape.walls[1]), 0.75 * 50, 1e-12);
  EXPECT_NEAR(distance(shape.edges[1].a, {-0.45, 0.6, 10}), 0, 1e-12);
}

TEST(ChannelShape, HasWallsThatJoinFromLegToLegOnAnyPath) {
  oracles::Random random(311);
  for (int round = 0; round < 200; ++round) {
    SCOPED_TRACE(round);
    std::vector<Vec3> path{random.point(20)};
    Vec3 along = random.direction();
    for (int leg = 0; leg < 4; ++leg) {
      path.push_back(path.back() + along * random.between(15, 30));
      Vec3 next = random.direction();
      while (dot(next, along) < -0.5) next = random.direction();
      along = next;
    }
    const Channel channel = angle(path);
    const ChannelShape shape = channel_shape(channel);
    ASSERT_EQ(shape.walls.size(), 8u);
    for (std::size_t leg = 0; leg < 4; ++leg) {
      const Vec3 run = unit(path[leg + 1] - path[leg]);
      for (std::size_t wall = 0; wall < 2; ++wall) {
        const auto& [a, b, c, d] = shape.walls[2 * leg + wall].corners;
        // Flat, along the leg, and as wide square to it as the section is.
        EXPECT_NEAR(norm(cross(unit(b - a), run)), 0, 1e-9);
        EXPECT_NEAR(norm(cross(unit(c - d), run)), 0, 1e-9);
        EXPECT_NEAR(norm(cross(d - a, run)), wall == 0 ? 0.6 : 0.75, 1e-9);
        if (leg == 3) continue;
        const auto& next = shape.walls[2 * (leg + 1) + wall].corners;
        EXPECT_NEAR(distance(b, next[0]), 0, 1e-9);
        EXPECT_NEAR(distance(c, next[3]), 0, 1e-9);
      }
    }
  }
}

TEST(ChannelShape, IsTheSameDrawnFromEitherEnd) {
  const std::vector<Vec3> there{{0, 0, 10}, {30, 2, 10}, {40, 20, 14}};
  const Obstacles first = alone(angle(there));
  const Obstacles second = alone(angle({there.rbegin(), there.rend()}));
  oracles::Random random(312);
  for (int i = 0; i < 200; ++i) {
    const Vec3 place = Vec3{30, 4, 11} + random.point(8);
    EXPECT_NEAR(to_surface_in(place, first), to_surface_in(place, second), 1e-9);
  }
}

TEST(ChannelShape, ATurnedEdgeStandsOutByItsRadius) {
  Channel channel = angle({{0, 0, 10}, {40, 0, 10}});
  channel.edge = EdgeGuard::rolled;
  channel.edge_radius_in = 0.1;
  // 1 in above the upright flange, whose edge is at WL 10.6.
  EXPECT_NEAR(to_surface_in({20, 0, 11.6}, alone(channel)), 1 - 0.1 - 0.01, 1e-12);
}

}  // namespace
}  // namespace linewright
