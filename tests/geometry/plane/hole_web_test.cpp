#include "geometry/plane/hole_web.hpp"

#include <gtest/gtest.h>

namespace linewright {
namespace {

constexpr double exact = 1e-12;

Hole circle(Vec2 centre, double diameter_in) {
  Hole hole;
  hole.shape = Circle{centre, diameter_in};
  return hole;
}

Hole outlined(const std::vector<Vec2>& corners) {
  Hole hole;
  hole.shape = corners;
  return hole;
}

const std::vector<Vec2> square = {{0, 0}, {4, 0}, {4, 4}, {0, 4}};

TEST(HoleWeb, BetweenCirclesIsWhatTheRadiiLeaveOfTheMiddles) {
  // 3-4-5: the middles are 5 apart, the radii 1 and 1.5.
  EXPECT_NEAR(web_between_in(circle({0, 0}, 2), circle({3, 4}, 3)), 2.5, exact);
  EXPECT_NEAR(web_between_in(circle({0, 0}, 6), circle({3, 4}, 8)), -2, exact);
}

TEST(HoleWeb, BetweenACircleAndAnOutlineIsFromItsNearestPlace) {
  EXPECT_NEAR(web_between_in(circle({6, 2}, 1), outlined(square)), 1.5, exact);
  // The corner (4, 4) is 5 from (7, 8).
  EXPECT_NEAR(web_between_in(outlined(square), circle({7, 8}, 2)), 4, exact);
  EXPECT_NEAR(web_between_in(circle({3, 2}, 1), outlined(square)), -1.5, exact);
}

TEST(HoleWeb, BetweenOutlinesIsTheLeastFromACornerToAnEdge) {
  const Hole beside = outlined({{5, 1}, {7, 1}, {7, 3}});
  EXPECT_NEAR(web_between_in(outlined(square), beside), 1, exact);
  EXPECT_NEAR(web_between_in(beside, outlined(square)), 1, exact);
}

TEST(HoleWeb, OutlinesThatCrossWithoutACornerInsideLeaveNothing) {
  const Hole across = outlined({{-1, 1}, {5, 1}, {5, 2}, {-1, 2}});
  const Hole upright = outlined({{1, -1}, {2, -1}, {2, 5}, {1, 5}});
  EXPECT_EQ(web_between_in(across, upright), 0);
}

TEST(HoleWeb, ToTheEdgeIsNegativeForAHoleThatReachesOut) {
  EXPECT_NEAR(web_to_edge_in(square, circle({1, 2}, 1)), 0.5, exact);
  EXPECT_NEAR(web_to_edge_in(square, circle({0.25, 2}, 1)), -0.25, exact);
  EXPECT_NEAR(web_to_edge_in(square, circle({-1, 2}, 1)), -1.5, exact);
  EXPECT_NEAR(web_to_edge_in(square, outlined({{1, 1}, {2, 1}, {2, 3}})), 1, exact);
  EXPECT_NEAR(web_to_edge_in(square, outlined({{-0.5, 1}, {2, 1}, {2, 3}})), -0.5, exact);
}

TEST(HoleWeb, ToANotchOfTheEdgeIsFromItsInnerCorner) {
  const std::vector<Vec2> notched = {{0, 0}, {1.9, 0}, {2, 1}, {2.1, 0}, {4, 0}, {4, 4}, {0, 4}};
  EXPECT_NEAR(web_to_edge_in(notched, outlined({{1, 2}, {3, 2}, {3, 3}, {1, 3}})), 1, exact);
}

}  // namespace
}  // namespace linewright
