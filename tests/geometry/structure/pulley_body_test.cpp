// Pulleys as discs: distances that can be worked by hand, and a search over many points.

#include "geometry/structure/pulley_body.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

namespace linewright {
namespace {

/// A disc of 2 in about the origin in the plane of BL and WL.
Obstacle disc(Vec3 axis = {1, 0, 0}, double swelling_in = 0) {
  Obstacle obstacle;
  obstacle.shape = disc_of({0, 0, 0}, axis, 2);
  obstacle.is_disc = true;
  obstacle.radius_in = swelling_in;
  return obstacle;
}

// The search along a segment is good to some 1e-8 of it.
constexpr double search_in = 1e-7;

TEST(Disc, IsAsFarAsItsFaceOrItsRim) {
  EXPECT_NEAR(nearest(Vec3{3, 1, 1}, disc()).distance_in, 3, 1e-12);
  EXPECT_NEAR(nearest(Vec3{0, 3, 4}, disc()).distance_in, 3, 1e-12);
  EXPECT_NEAR(nearest(Vec3{4, 3, 4}, disc()).distance_in, 5, 1e-12);
  EXPECT_NEAR(nearest(Vec3{3, 1, 1}, disc({1, 0, 0}, 0.25)).distance_in, 2.75, 1e-12);
}

TEST(Disc, IsPiercedAndPassedBySegments) {
  EXPECT_EQ(nearest(Segment3{{-5, 1, 1}, {3, 1, 1}}, disc()).distance_in, 0);
  EXPECT_NEAR(nearest(Segment3{{-5, 3, 0}, {5, 3, 0}}, disc()).distance_in, 1, search_in);
  EXPECT_NEAR(nearest(Segment3{{1, -9, 0}, {1, 9, 0}}, disc()).distance_in, 1, search_in);
}

TEST(Disc, LiesInItsBoxWhicheverWayItIsTurned) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> any(-1, 1);
  for (int round = 0; round < 200; ++round) {
    const Vec3 axis = unit({any(random), any(random), any(random)});
    const Obstacle turned = disc(axis);
    const Vec3 point{4 * any(random), 4 * any(random), 4 * any(random)};
    const Vec3 u = unit(cross(axis, std::abs(axis.x) < 0.9 ? Vec3{1, 0, 0} : Vec3{0, 1, 0}));
    const Vec3 v = cross(axis, u);
    const Bounds box = bounds_of(turned.shape);
    const double height = dot(point, axis);
    const double outward = std::max(0.0, norm(point - axis * height) - 2);
    EXPECT_NEAR(nearest(point, turned).distance_in, std::hypot(height, outward), 1e-9);
    for (int i = 0; i < 16; ++i) {
      const double angle = i * std::numbers::pi / 8;
      const Vec3 rim = (u * std::cos(angle) + v * std::sin(angle)) * 2;
      EXPECT_NEAR(nearest(rim, turned).distance_in, 0, 1e-9);
      EXPECT_LE(least_distance({rim, rim}, box), 1e-9);
    }
  }
}

TEST(PulleyBody, HasAGrooveBetweenItsFlanges) {
  PulleyBody pulley;
  pulley.axis = {0, 1, 0};
  pulley.root_radius_in = 2;
  pulley.rim_radius_in = 3;
  pulley.width_in = 0.8;
  std::vector<Obstacle> body;
  add_pulley_body(pulley, 4, body);
  const auto away = [&](Vec3 point) {
    double least = 1e9;
    for (const Obstacle& each : body) least = std::min(least, nearest(point, each).distance_in);
    return least;
  };
  ASSERT_EQ(body.size(), 3u);
  EXPECT_EQ(body[0].part, 4);
  EXPECT_NEAR(away({4, 0.3, 0}), 1, 1e-9);    // over a flange's rim
  EXPECT_NEAR(away({1, 1.4, 0}), 1, 1e-9);    // beside it
  EXPECT_NEAR(away({2.1, 0, 0}), 0.1, 1e-9);  // in the groove, over its root
  EXPECT_NEAR(away({2.8, 0, 0}), 0.2, 1e-9);  // in the groove, beside the flanges
  EXPECT_LT(away({1, 0, 0}), 0);
}

// Far from the origin a search within a search has little to go by: an overlap drawn square to both
// axes must be all that it is.
TEST(PulleyBody, OverlapsAnotherBesideItByWhatTheirWidthsDo) {
  PulleyBody large;
  large.centre = {200, 0, 50};
  large.axis = {0.6, 0.8, 0};
  large.root_radius_in = 1.3;
  large.rim_radius_in = 1.5;
  large.width_in = 0.3;
  PulleyBody small = large;
  small.root_radius_in = 0.55;
  small.rim_radius_in = 0.75;
  // 0.1 in off along the axis, 0.7 in across it.
  small.centre = large.centre + Vec3{0.5, -0.5, 0};
  EXPECT_NEAR(nearest(large, small).distance_in, 0.1 - 0.3, search_in);
  EXPECT_NEAR(nearest(small, large).distance_in, 0.1 - 0.3, search_in);
}

// Against many points of the obstacle, each measured to the pulley by itself.
TEST(PulleyBody, IsAsFarFromAnObstacleAsItsNearestPoint) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> any(-1, 1);
  const auto place = [&] { return Vec3{5 * any(random), 5 * any(random), 5 * any(random)}; };
  for (int round = 0; round < 100; ++round) {
    PulleyBody pulley;
    pulley.centre = place() / 5;
    pulley.axis = unit(place());
    pulley.root_radius_in = 2;
    pulley.rim_radius_in = 2.5;
    pulley.width_in = 0.6;
    std::vector<Obstacle> body;
    add_pulley_body(pulley, 0, body);
    Obstacle triangle;
    triangle.shape = {place(), place(), place()};
    double least = 1e9;
    constexpr int steps = 60;
    for (int i = 0; i <= steps; ++i) {
      const Vec3 from = between(triangle.shape.a, triangle.shape.b, i / double{steps});
      const Vec3 to = between(triangle.shape.a, triangle.shape.c, i / double{steps});
      for (const Obstacle& each : body)
        least = std::min(least, nearest(Segment3{from, to}, each).distance_in);
    }
    const double found = nearest(pulley, triangle).distance_in;
    EXPECT_LE(found, least + search_in);
    // No point of the triangle is farther than half a step from one of those segments.
    EXPECT_GE(found, least - 10 * std::sqrt(3.0) / steps);
  }
}

}  // namespace
}  // namespace linewright
