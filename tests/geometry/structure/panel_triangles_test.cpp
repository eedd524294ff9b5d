#include "geometry/structure/panel_triangles.hpp"

#include <gtest/gtest.h>

#include <algorithm>

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

TEST(PanelTriangles, OfAWarpedPanelAreAFanAboutItsFirstCorner) {
  const std::vector<Vec3> corners{{0, 0, 0}, {10, 0, 0}, {10, 10, 3}, {0, 10, 0}};
  const auto triangles = panel_triangles(corners);
  ASSERT_EQ(triangles.size(), 2u);
  for (const Triangle3& triangle : triangles) EXPECT_EQ(triangle.a, corners[0]);
  EXPECT_EQ(triangles[0].c, corners[2]);
}

TEST(PanelTriangles, OfALineOrLessAreNoTiling) {
  EXPECT_TRUE(panel_triangles({}).empty());
  EXPECT_TRUE(panel_triangles({{0, 0, 0}, {1, 0, 0}}).empty());
  EXPECT_EQ(panel_triangles({{0, 0, 0}, {1, 0, 0}, {2, 0, 0}}).size(), 1u);
}

}  // namespace
}  // namespace linewright
