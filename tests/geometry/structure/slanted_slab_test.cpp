// Webs that stand any which way, against the same webs at a station.

#include <gtest/gtest.h>

#include "geometry/structure/obstacles.hpp"
#include "oracles/random_path.hpp"

namespace linewright {
namespace {

Frame web(const DrawnPlane& plane) {
  Frame frame;
  frame.name = "F";
  frame.plane = plane;
  frame.thickness_in = 0.5;
  frame.outline = {{-4, -3}, {4, -3}, {4, 3}, {-4, 3}};
  frame.holes.push_back({"h", Circle{{1, 1}, 1}, EdgeGuard::bare, {}, {}});
  return frame;
}

Obstacles alone(const Frame& frame) {
  Structure structure;
  structure.frames = {frame};
  return Obstacles(structure);
}

TEST(SlantedWeb, OfARibIsMeasuredFromItsOwnSides) {
  const Obstacles rib = alone(web(at_buttock_line(-12)));
  double to_face = 1e9;
  double to_rim = 1e9;
  for (const Obstacle& obstacle : rib.all()) {
    // 3 in inboard of the web, half of whose thickness is 1/4 in, over its middle.
    to_face = std::min(to_face, nearest(Vec3{-2, -9, -1}, obstacle).distance_in);
    // In the hole's middle, which is at FS 1, WL 1: its radius away from its inside.
    if (obstacle.feature == Feature::hole_edge)
      to_rim = std::min(to_rim, nearest(Vec3{1, -12, 1}, obstacle).distance_in);
  }
  EXPECT_NEAR(to_face, 2.75, 1e-12);
  EXPECT_NEAR(to_rim, 0.5, obstacle_sagitta_in);
}

TEST(SlantedWeb, OfAFloorIsMeasuredFromItsOwnSides) {
  const Obstacles floor = alone(web(at_waterline(8)));
  double below = 1e9;
  for (const Obstacle& obstacle : floor.all())
    below = std::min(below, nearest(Segment3{{-3, -2, 5}, {3, -2, 6}}, obstacle).distance_in);
  EXPECT_NEAR(below, 8 - 0.25 - 6, 1e-12);
}

TEST(SlantedWeb, IsAsFarAwayAsTheSameAtAStation) {
  oracles::Random random(91);
  const Obstacles straight = alone(web(at_station(0)));
  for (int round = 0; round < 40; ++round) {
    SCOPED_TRACE(round);
    const DrawnPlane plane =
        plane_through(random.point(50), random.direction(), random.direction());
    const Obstacles slanted = alone(web(plane));
    ASSERT_EQ(slanted.all().size(), straight.all().size());
    const auto moved = [&plane](Vec3 at) { return plane.in_space({at.y, at.z}, at.x); };
    for (int line = 0; line < 10; ++line) {
      const Segment3 segment{random.point(6), random.point(6)};
      const Segment3 there{moved(segment.a), moved(segment.b)};
      for (std::size_t i = 0; i < straight.all().size(); ++i) {
        const Nearest found = nearest(there, slanted.all()[i]);
        // Places of up to 60 in, turned: a dozen roundings of 1e-14 in each.
        EXPECT_NEAR(found.distance_in, nearest(segment, straight.all()[i]).distance_in, 1e-11);
        EXPECT_NEAR(distance(found.on_first, found.on_second), found.distance_in, 1e-11);
      }
    }
  }
}

TEST(SlantedWeb, IsFoundWhereverItIs) {
  oracles::Random random(92);
  for (int round = 0; round < 40; ++round) {
    SCOPED_TRACE(round);
    const Obstacles slanted =
        alone(web(plane_through(random.point(20), random.direction(), random.direction())));
    for (int probe = 0; probe < 40; ++probe) {
      const Vec3 at = random.point(25);
      std::size_t met = 0;
      for (const Obstacle& obstacle : slanted.all())
        met += nearest(at, obstacle).distance_in <= 0 ? 1 : 0;
      std::size_t visited = 0;
      slanted.visit({at, at}, [&](const Obstacle& obstacle) {
        visited += nearest(at, obstacle).distance_in <= 0 ? 1 : 0;
      });
      EXPECT_EQ(visited, met);
    }
    // Probes in the web itself, so that some are met.
    std::size_t met = 0;
    for (const Obstacle& obstacle : slanted.all()) {
      const Vec3 inside = (obstacle.shape.a + obstacle.shape.b) / 2;
      slanted.visit({inside, inside},
                    [&](const Obstacle& each) { met += &each == &obstacle ? 1 : 0; });
    }
    EXPECT_EQ(met, slanted.all().size());
  }
}

}  // namespace
}  // namespace linewright
