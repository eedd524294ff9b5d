#include "geometry/structure/panel_triangles.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "geometry/plane/polygon.hpp"
#include "oracles/random_shapes.hpp"

namespace linewright {
namespace {

using oracles::Random;

double area_of(const std::vector<Triangle3>& triangles) {
  double sum_in2 = 0;
  for (const auto& [a, b, c] : triangles) sum_in2 += norm(cross(b - a, c - a)) / 2;
  return sum_in2;
}

double least_distance(Vec3 point, const std::vector<Triangle3>& triangles) {
  double least_in = nearest(point, triangles.at(0)).distance_in;
  for (const Triangle3& triangle : triangles)
    least_in = std::min(least_in, nearest(point, triangle).distance_in);
  return least_in;
}

TEST(PanelTriangles, TileAnEllFromAnyFirstCorner) {
  std::vector<Vec3> ell{{100, 0, 20},  {140, 0, 20},  {140, 10, 20},
                        {110, 10, 20}, {110, 40, 20}, {100, 40, 20}};
  for (std::size_t first = 0; first < ell.size(); ++first) {
    const auto triangles = panel_triangles(ell);
    EXPECT_NEAR(area_of(triangles), 40 * 40 - 30 * 30, 1e-9);
    EXPECT_NEAR(least_distance({118, 17, 20}, triangles), 7, 1e-12);
    std::rotate(ell.begin(), ell.begin() + 1, ell.end());
  }
}

TEST(PanelTriangles, TileFlatPolygonsHoweverTheyLieInSpace) {
  Random random(251);
  for (int round = 0; round < 300; ++round) {
    const auto drawn = oracles::star_polygon(random, {0, 0}, 2, 20, random.whole(3, 12));
    const Vec3 origin = random.point(200), along = random.direction();
    const Vec3 across = unit(cross(along, random.direction()));
    std::vector<Vec3> corners;
    for (const Vec2 corner : drawn)
      corners.push_back(origin + along * corner.u + across * corner.v);
    const auto triangles = panel_triangles(corners);
    ASSERT_NEAR(area_of(triangles), area(drawn), 1e-9 * area(drawn));
    for (int i = 0; i < 20; ++i) {
      const Vec2 point{random.between(-20, 20), random.between(-20, 20)};
      const Vec3 placed = origin + along * point.u + across * point.v;
      const double expected_in = covers(drawn, point) ? 0 : edge_distance(drawn, point);
      ASSERT_NEAR(least_distance(placed, triangles), expected_in, 1e-9);
    }
  }
}

// Folded along one diagonal the middle is at 1.5 in, along the other at 0, evenly warped at 0.75.
TEST(PanelTriangles, OfAWarpedPanelHoldEveryWayToFoldIt) {
  const std::vector<Vec3> corners{{0, 0, 0}, {10, 0, 0}, {10, 10, 3}, {0, 10, 0}};
  const auto triangles = panel_triangles(corners);
  for (const double height : {0.0, 0.75, 1.5})
    EXPECT_NEAR(least_distance({5, 5, height}, triangles), 0, 1e-12) << height;
  EXPECT_NEAR(least_distance({5, 5, 2.5}, triangles),
              nearest(Vec3{5, 5, 2.5}, Triangle3{corners[0], corners[1], corners[2]}).distance_in,
              1e-12);
}

TEST(PanelTriangles, OfAWarpedPanelAreTheSameFromAnyCornerAndEitherWayRound) {
  Random random(252);
  for (int round = 0; round < 60; ++round) {
    std::vector<Vec3> corners;
    const int count = random.whole(4, 7);
    for (int i = 0; i < count; ++i) {
      const double angle = 6.283185307179586 * i / count;
      corners.push_back({100 + 10 * std::cos(angle), 10 * std::sin(angle), random.between(9, 11)});
    }
    const auto drawn = panel_triangles(corners);
    std::vector<Vec3> turned = corners;
    std::rotate(turned.begin(), turned.begin() + random.whole(1, count - 1), turned.end());
    if (round % 2 == 0) std::reverse(turned.begin(), turned.end());
    const auto redrawn = panel_triangles(turned);
    for (int i = 0; i < 20; ++i) {
      const Vec3 place{random.between(90, 110), random.between(-10, 10), random.between(8, 12)};
      ASSERT_NEAR(least_distance(place, drawn), least_distance(place, redrawn), 1e-9);
    }
  }
}

TEST(PanelTriangles, OfALineOrLessAreNoTiling) {
  EXPECT_TRUE(panel_triangles({}).empty());
  EXPECT_TRUE(panel_triangles({{0, 0, 0}, {1, 0, 0}}).empty());
  EXPECT_EQ(panel_triangles({{0, 0, 0}, {1, 0, 0}, {2, 0, 0}}).size(), 1u);
}

/// A round rim about the origin whose corners stray from WL 0 by up to `stray_in`.
std::vector<Vec3> wavy_rim(Random& random, int count, double stray_in) {
  std::vector<Vec3> rim;
  for (int i = 0; i < count; ++i) {
    const double angle = 2 * std::acos(-1.0) * i / count;
    rim.push_back({8 * std::cos(angle), 8 * std::sin(angle), random.between(-stray_in, stray_in)});
  }
  return rim;
}

TEST(MeanPanel, IsForManyCornersThatAreNotFlat) {
  Random random(253);
  const int most = static_cast<int>(most_fanned_corners);
  EXPECT_FALSE(mean_panel(wavy_rim(random, most, 0.3)));
  EXPECT_FALSE(mean_panel(wavy_rim(random, most + 1, 0)));
  EXPECT_TRUE(mean_panel(wavy_rim(random, most + 1, 0.3)));
}

TEST(MeanPanel, HoldsEveryFanWithinItsThicknessAndGrowsWithItsCornersAlone) {
  Random random(254);
  for (const int count : {65, 200}) {
    const std::vector<Vec3> rim = wavy_rim(random, count, 0.3);
    const MeanPanel mean = mean_panel(rim).value();
    EXPECT_EQ(mean.triangles.size(), rim.size() - 2);
    EXPECT_LE(mean.stray_in, 0.31);
    for (const Triangle3& triangle : panel_triangles(rim)) {
      const Vec3 inside = (triangle.a + triangle.b + triangle.c) / 3;
      ASSERT_LE(least_distance(inside, mean.triangles), mean.stray_in + 1e-9);
    }
  }
}

TEST(MeanPanel, CoversTheHullOfAnOutlineThatCrossesItself) {
  Random random(255);
  std::vector<Vec3> rim = wavy_rim(random, 80, 0.3);
  std::swap(rim[10], rim[11]);
  const MeanPanel mean = mean_panel(rim).value();
  for (const Vec3 corner : rim)
    EXPECT_LE(least_distance(corner, mean.triangles), mean.stray_in + 1e-9);
}

}  // namespace
}  // namespace linewright
