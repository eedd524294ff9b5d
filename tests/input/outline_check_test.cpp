#include "input/outline_check.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <random>

namespace linewright {
namespace {

const std::vector<Vec2> ell{{0, 0}, {4, 0}, {4, 1}, {1, 1}, {1, 4}, {0, 4}};

TEST(OutlineCheck, AcceptsAnOutlineEitherWayRound) {
  EXPECT_FALSE(outline_fault(ell).has_value());
  EXPECT_FALSE(outline_fault({ell.rbegin(), ell.rend()}).has_value());
}

TEST(OutlineCheck, AcceptsACornerOnAStraightEdge) {
  EXPECT_FALSE(outline_fault({{0, 0}, {2, 0}, {4, 0}, {4, 3}}).has_value());
}

TEST(OutlineCheck, PointsAtTheCornerThatIsWrong) {
  const auto repeated = outline_fault({{0, 0}, {4, 0}, {4, 0}, {0, 3}});
  ASSERT_TRUE(repeated.has_value());
  EXPECT_EQ(repeated->corner, 2u);
  const auto spike = outline_fault({{0, 0}, {4, 0}, {4, 3}, {4, 1}, {0, 3}});
  ASSERT_TRUE(spike.has_value());
  EXPECT_EQ(spike->words, "the outline doubles back at corner 3");
}

TEST(OutlineCheck, RefusesAnEdgeThatOnlyTouchesAnother) {
  const auto fault = outline_fault({{0, 0}, {4, 0}, {4, 4}, {2, 0}, {0, 4}});
  ASSERT_TRUE(fault);
  EXPECT_EQ(fault->words,
            "the outline crosses itself: the edge after corner 1 meets the edge after corner 4");
}

TEST(OutlineCheck, SaysNothingOfCornersThatCouldNotBeRead) {
  const double unread = std::numeric_limits<double>::quiet_NaN();
  EXPECT_FALSE(outline_fault({{0, 0}, {unread, 0}, {0, 0}}).has_value());
  EXPECT_FALSE(panel_fault({{0, 0, 0}, {0, 0, unread}, {0, 0, 0}}).has_value());
}

TEST(OutlineCheck, RefusesMoreCornersThanItLooksAt) {
  const auto fault = outline_fault(std::vector<Vec2>(most_corners + 1));
  ASSERT_TRUE(fault);
  EXPECT_EQ(fault->words, "expected at most 10000 corners, found 10001");
}

TEST(OutlineCheck, CoversItsInsideAndItsEdge) {
  EXPECT_TRUE(outline_covers(ell, {0.5, 3}));
  EXPECT_TRUE(outline_covers(ell, {3, 0.5}));
  EXPECT_TRUE(outline_covers(ell, {4, 0.5}));
  EXPECT_TRUE(outline_covers(ell, {1, 1}));
  EXPECT_FALSE(outline_covers(ell, {2, 2}));
  EXPECT_FALSE(outline_covers(ell, {-0.001, 2}));
}

bool properly_cross(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
  return cross(b - a, c - a) * cross(b - a, d - a) < 0 &&
         cross(d - c, a - c) * cross(d - c, b - c) < 0;
}

/// Every edge against every other.
bool any_edges_cross(const std::vector<Vec2>& corners) {
  const std::size_t count = corners.size();
  for (std::size_t i = 0; i < count; ++i)
    for (std::size_t j = i + 1; j < count; ++j)
      if (properly_cross(corners[i], corners[(i + 1) % count], corners[j],
                         corners[(j + 1) % count]))
        return true;
  return false;
}

// Corners at random places touch no other edge except by crossing it.
TEST(OutlineCheck, FindsACrossingWhereEveryPairOfEdgesComparedShowsOne) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> place(-10, 10);
  int crossed = 0;
  for (int round = 0; round < 3000; ++round) {
    std::vector<Vec2> corners(4 + static_cast<std::size_t>(round) % 5);
    for (Vec2& corner : corners) corner = {place(random), place(random)};
    const bool crosses = any_edges_cross(corners);
    EXPECT_EQ(outline_fault(corners).has_value(), crosses) << "round " << round;
    crossed += crosses ? 1 : 0;
  }
  EXPECT_GT(crossed, 1000);
  EXPECT_LT(crossed, 2900);
}

// Corners in order of their angle about a middle make a simple outline.
TEST(OutlineCheck, AcceptsStarShapedOutlines) {
  std::mt19937 random(8);
  std::uniform_real_distribution<double> reach(1, 10);
  for (int round = 0; round < 200; ++round) {
    std::vector<Vec2> corners;
    for (int i = 0; i < 40; ++i) {
      const double angle = 2 * std::numbers::pi * i / 40;
      corners.push_back(Vec2{std::cos(angle), std::sin(angle)} * reach(random));
    }
    EXPECT_FALSE(outline_fault(corners).has_value()) << "round " << round;
    EXPECT_TRUE(outline_covers(corners, {0, 0}));
  }
}

}  // namespace
}  // namespace linewright
