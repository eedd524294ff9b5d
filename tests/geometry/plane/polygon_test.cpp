#include "geometry/plane/polygon.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "geometry/structure/obstacles.hpp"
#include "oracles/random_shapes.hpp"
#include "oracles/winding_number.hpp"

namespace linewright {
namespace {

using oracles::Random;
using Polygon = std::vector<Vec2>;

const Polygon square{{0, 0}, {4, 0}, {4, 4}, {0, 4}};
const Polygon ell{{0, 0}, {6, 0}, {6, 2}, {2, 2}, {2, 5}, {0, 5}};

Polygon reversed(Polygon polygon) {
  std::reverse(polygon.begin(), polygon.end());
  return polygon;
}

Hole circle_hole(Vec2 centre, double diameter) {
  Hole hole;
  hole.name = "round";
  hole.shape = Circle{centre, diameter};
  return hole;
}

TEST(Covers, InsideOnTheEdgeAndOutside) {
  for (const Polygon& polygon : {square, reversed(square)}) {
    EXPECT_TRUE(covers(polygon, {1, 3}));
    EXPECT_TRUE(covers(polygon, {4, 2}));
    EXPECT_TRUE(covers(polygon, {0, 0}));
    EXPECT_FALSE(covers(polygon, {4.000001, 2}));
  }
}

TEST(Covers, TheNotchOfAnEllIsOutside) {
  EXPECT_TRUE(covers(ell, {1, 4}));
  EXPECT_FALSE(covers(ell, {4, 4}));
}

TEST(Covers, NothingByFewerThanThreeCorners) {
  EXPECT_FALSE(covers(Polygon{}, {0, 0}));
  EXPECT_FALSE(covers(Polygon{{0, 0}, {1, 0}}, {0.5, 0}));
}

TEST(Covers, ACircleExactly) {
  const Hole hole = circle_hole({1, 2}, 10);
  EXPECT_TRUE(covers(hole, {4, 6}));  // 3-4-5
  EXPECT_FALSE(covers(hole, {4, std::nextafter(6, 7)}));
}

TEST(Covers, AgreesWithTheWindingNumber) {
  Random random(101);
  for (int i = 0; i < 200; ++i) {
    const Polygon polygon = oracles::star_polygon(random, {100, 20}, 1, 10, random.whole(3, 30));
    for (int j = 0; j < 50; ++j) {
      const Vec2 point{100 + random.between(-11, 11), 20 + random.between(-11, 11)};
      ASSERT_EQ(covers(polygon, point), oracles::winding_number(polygon, point) != 0);
    }
  }
}

TEST(EdgeDistance, IsTheSameOnBothSidesOfAnEdge) {
  EXPECT_DOUBLE_EQ(edge_distance(square, {1, 2}), 1);
  EXPECT_DOUBLE_EQ(edge_distance(square, {-1, 2}), 1);
  EXPECT_DOUBLE_EQ(edge_distance(square, {7, 8}), 5);  // 3-4-5 from the corner
  EXPECT_DOUBLE_EQ(edge_distance(square, {0, 3}), 0);
}

TEST(EdgeDistance, CountsTheEdgeThatClosesThePolygon) {
  EXPECT_DOUBLE_EQ(edge_distance(Polygon{{0, 0}, {9, 0}, {9, 9}, {0, 9}}, {0.5, 5}), 0.5);
}

TEST(EdgeDistance, OfACircleIsExact) {
  const Hole hole = circle_hole({1, 2}, 10);
  EXPECT_DOUBLE_EQ(edge_distance(hole, {1, 2}), 5);
  EXPECT_DOUBLE_EQ(edge_distance(hole, {7, 10}), 5);  // 6-8-10 from the centre
}

TEST(EdgeDistance, OfNoCornersIsInfinite) {
  EXPECT_EQ(edge_distance(Polygon{}, {0, 0}), std::numeric_limits<double>::infinity());
}

TEST(EdgePolygon, OfACircleLiesInsideWithinItsSagitta) {
  for (const double diameter : {0.1, 0.75, 5.0, 40.0}) {
    const Vec2 centre{-8, 14};
    const Polygon polygon = edge_polygon(circle_hole(centre, diameter), obstacle_sagitta_in);
    ASSERT_GE(polygon.size(), 8u);
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Vec2 middle = (polygon[i] + polygon[(i + 1) % polygon.size()]) * 0.5;
      EXPECT_NEAR(distance(centre, polygon[i]), diameter / 2, 1e-12);
      EXPECT_LE(distance(centre, middle), diameter / 2);
      EXPECT_GE(distance(centre, middle), diameter / 2 - obstacle_sagitta_in - 1e-12);
    }
  }
}

TEST(EdgePolygon, OfAPolygonIsItself) {
  Hole hole;
  hole.shape = ell;
  EXPECT_EQ(edge_polygon(hole, obstacle_sagitta_in), ell);
}

TEST(SimplePolygon, EitherSenseOfRotation) {
  EXPECT_TRUE(is_simple_polygon(ell));
  EXPECT_TRUE(is_simple_polygon(reversed(ell)));
}

TEST(SimplePolygon, CornersInLineAreAllowed) {
  EXPECT_TRUE(is_simple_polygon({{0, 0}, {2, 0}, {4, 0}, {4, 4}}));
}

TEST(SimplePolygon, RefusesABowTie) {
  EXPECT_FALSE(is_simple_polygon({{0, 0}, {4, 4}, {4, 0}, {0, 4}}));
}

TEST(SimplePolygon, RefusesNoAreaAndTooFewCorners) {
  EXPECT_FALSE(is_simple_polygon({}));
  EXPECT_FALSE(is_simple_polygon({{0, 0}, {1, 0}}));
  EXPECT_FALSE(is_simple_polygon({{0, 0}, {2, 0}, {4, 0}}));
  EXPECT_FALSE(is_simple_polygon({{1, 1}, {1, 1}, {1, 1}}));
}

TEST(SimplePolygon, RefusesASpike) {
  EXPECT_FALSE(is_simple_polygon({{0, 0}, {4, 0}, {9, 0}, {4, 0}, {4, 4}}));
}

TEST(SimplePolygon, RefusesNumbersThatAreNotFinite) {
  const double infinite = std::numeric_limits<double>::infinity();
  const double none = std::numeric_limits<double>::quiet_NaN();
  EXPECT_FALSE(is_simple_polygon({{0, 0}, {infinite, 0}, {0, 4}}));
  EXPECT_FALSE(is_simple_polygon({{0, 0}, {none, 0}, {0, 4}}));
}

TEST(PolygonRelations, EnclosingNeedsRoomAllRound) {
  EXPECT_TRUE(encloses(square, {{1, 1}, {3, 1}, {2, 3}}));
  EXPECT_FALSE(encloses(square, {{0, 1}, {3, 1}, {2, 3}}));
  EXPECT_FALSE(encloses(square, {{1, 1}, {5, 1}, {2, 3}}));
  EXPECT_FALSE(encloses(ell, {{1, 1}, {5, 1}, {1, 4.5}}));
}

TEST(PolygonRelations, ApartMeansNoSharedPoint) {
  EXPECT_TRUE(apart(square, {{5, 0}, {6, 0}, {6, 1}}));
  EXPECT_FALSE(apart(square, {{4, 0}, {6, 0}, {6, 1}}));
  EXPECT_FALSE(apart(square, {{1, 1}, {2, 1}, {2, 2}}));
}

TEST(Grown, ASquareGainsStripsAndRoundCorners) {
  const auto wider = grown(square, 1, 1e-6);
  ASSERT_TRUE(wider);
  EXPECT_NEAR(area(*wider), 16 + 16 + std::numbers::pi, 1e-4);
  EXPECT_LE(area(*wider), 16 + 16 + std::numbers::pi);
}

TEST(Grown, EveryCornerOfAnEllKeepsTheDistance) {
  for (const Polygon& polygon : {ell, reversed(ell)}) {
    const auto wider = grown(polygon, 0.25, 1e-4);
    ASSERT_TRUE(wider);
    EXPECT_TRUE(encloses(*wider, polygon));
    for (const Vec2 corner : *wider) EXPECT_NEAR(edge_distance(polygon, corner), 0.25, 1e-9);
  }
}

TEST(Grown, RefusesWhenASlotWouldClose) {
  const Polygon slotted{{0, 0}, {4, 0}, {4, 4}, {2.1, 4}, {2.1, 1}, {1.9, 1}, {1.9, 4}, {0, 4}};
  EXPECT_TRUE(grown(slotted, 0.09, 1e-3));
  EXPECT_FALSE(grown(slotted, 0.12, 1e-3));
}

}  // namespace
}  // namespace linewright
