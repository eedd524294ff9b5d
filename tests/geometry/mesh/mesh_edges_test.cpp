#include "geometry/mesh/mesh_edges.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <random>
#include <vector>

namespace linewright {
namespace {

constexpr double degree = std::numbers::pi / 180;

using Corner = std::array<float, 3>;

struct EdgesTest : testing::Test {
  std::vector<EdgeCandidate> candidates;

  void add(Corner a, Corner b, Corner c, bool asked = true) {
    const auto index = static_cast<std::uint32_t>(candidates.size());
    candidates.push_back({{a[0], a[1], a[2], b[0], b[1], b[2], c[0], c[1], c[2]}, index, asked});
  }

  /// Two triangles.
  void add_square(Corner a, Corner b, Corner c, Corner d) {
    add(a, b, c);
    add(a, c, d);
  }

  void add_cube() {
    const auto at = [](int x, int y, int z) { return Corner{float(x), float(y), float(z)}; };
    add_square(at(0, 0, 0), at(0, 1, 0), at(1, 1, 0), at(1, 0, 0));
    add_square(at(0, 0, 1), at(1, 0, 1), at(1, 1, 1), at(0, 1, 1));
    add_square(at(0, 0, 0), at(1, 0, 0), at(1, 0, 1), at(0, 0, 1));
    add_square(at(0, 1, 0), at(0, 1, 1), at(1, 1, 1), at(1, 1, 0));
    add_square(at(0, 0, 0), at(0, 0, 1), at(0, 1, 1), at(0, 1, 0));
    add_square(at(1, 0, 0), at(1, 1, 0), at(1, 1, 1), at(1, 0, 1));
  }

  /// Two faces along x, the second turned up by an angle.
  void add_fold(double angle_deg, bool flipped = false) {
    const Corner far{0, static_cast<float>(-std::cos(angle_deg * degree)),
                     static_cast<float>(std::sin(angle_deg * degree))};
    add({0, 0, 0}, {1, 0, 0}, {0, 1, 0});
    if (flipped)
      add({0, 0, 0}, {1, 0, 0}, far);
    else
      add({1, 0, 0}, {0, 0, 0}, far);
  }

  EdgeSearch search(double crease_angle_deg = 30) const {
    return find_sharp_edges(candidates, crease_angle_deg * degree);
  }
};

TEST_F(EdgesTest, ASquareOfTwoTrianglesHasFourOpenEdgesAndNoDiagonal) {
  add_square({0, 0, 0}, {1, 0, 0}, {1, 1, 0}, {0, 1, 0});
  const EdgeSearch found = search();
  EXPECT_EQ(found.open, 4U);
  EXPECT_EQ(found.creases + found.shared_by_many + found.turned_against, 0U);
  ASSERT_EQ(found.sharp.size(), 4U);
  // The diagonal is from the first one's third corner, and the second one's first.
  for (const SharpEdge& edge : found.sharp)
    EXPECT_FALSE((edge.candidate == 0 && edge.corner == 2) ||
                 (edge.candidate == 1 && edge.corner == 0));
}

TEST_F(EdgesTest, ACubeHasTwelveCreasesAtALimitUnderItsRightAngle) {
  add_cube();
  EXPECT_EQ(search(30).creases, 12U);
  EXPECT_EQ(search(30).sharp.size(), 12U);
  EXPECT_EQ(search(89.9).creases, 12U);
  EXPECT_EQ(search(30).open + search(30).turned_against, 0U);
}

TEST_F(EdgesTest, ACubeHasNoCreaseAtALimitOverItsRightAngle) {
  add_cube();
  EXPECT_EQ(search(90).creases, 0U);
  EXPECT_EQ(search(100).sharp.size(), 0U);
}

TEST_F(EdgesTest, ADihedralCountsFromJustOverTheLimit) {
  add_fold(29);
  EXPECT_EQ(search(30).creases, 0U);
  candidates.clear();
  add_fold(31);
  EXPECT_EQ(search(30).creases, 1U);
  EXPECT_EQ(search(30).open, 4U);
  EXPECT_EQ(search(30).sharp.size(), 5U);
}

TEST_F(EdgesTest, AFaceWoundTheOtherWayIsToldAndItsAngleIsTheSame) {
  for (const double angle : {0.0, 29.0, 31.0, 90.0, 150.0}) {
    SCOPED_TRACE(angle);
    candidates.clear();
    add_fold(angle);
    const EdgeSearch straight = search();
    candidates.clear();
    add_fold(angle, true);
    const EdgeSearch flipped = search();
    EXPECT_EQ(straight.turned_against, 0U);
    EXPECT_EQ(flipped.turned_against, 1U);
    EXPECT_EQ(flipped.creases, straight.creases);
    EXPECT_EQ(flipped.open, straight.open);
  }
}

TEST_F(EdgesTest, ACopyOfAFaceClosesNoEdge) {
  add({0, 0, 0}, {1, 0, 0}, {0, 1, 0});
  add({1, 0, 0}, {0, 1, 0}, {0, 0, 0});  // begun elsewhere
  add({0, 0, 0}, {0, 1, 0}, {1, 0, 0});  // seen from behind
  const EdgeSearch found = search();
  EXPECT_EQ(found.duplicated, 2U);
  EXPECT_EQ(found.open, 3U);
  EXPECT_EQ(found.sharp.size(), 3U);
  EXPECT_EQ(found.turned_against + found.shared_by_many, 0U);
}

TEST_F(EdgesTest, AnEdgeOfThreeFacesIsSharp) {
  add_fold(0);
  add({0, 0, 0}, {1, 0, 0}, {0, 0, 1});
  const EdgeSearch found = search();
  EXPECT_EQ(found.shared_by_many, 1U);
  EXPECT_EQ(found.open, 6U);
  EXPECT_EQ(found.sharp.size(), 7U);
}

TEST_F(EdgesTest, ManyFacesAtOneEdgeTakeNoLong) {
  constexpr int count = 30000;
  for (int i = 0; i < count; ++i) {
    const double angle = 2 * std::numbers::pi * i / count;
    add({0, 0, 0}, {0, 0, 1},
        {static_cast<float>(std::cos(angle)), static_cast<float>(std::sin(angle)), 0.5F});
  }
  const EdgeSearch found = search();
  EXPECT_EQ(found.shared_by_many, 1U);
  EXPECT_EQ(found.open, 2U * count);
}

TEST_F(EdgesTest, TrianglesWithoutAreaAreCountedAndHaveNoCrease) {
  add({0, 0, 0}, {0, 0, 0}, {0, 0, 0});
  add({0, 0, 0}, {5, 5, 5}, {5, 5, 5});
  add({0, 0, 0}, {1, 1, 1}, {3, 3, 3});
  const EdgeSearch found = search();
  EXPECT_EQ(found.without_area, 3U);
  EXPECT_EQ(found.creases, 0U);
  // The needle's own; what has two corners in one place has none.
  EXPECT_EQ(found.open, 3U);
}

TEST_F(EdgesTest, ALineOfNoWidthDoesNotCloseAnOpenEdge) {
  add({0, 0, 0}, {1, 0, 0}, {0, 1, 0});
  add({1, 0, 0}, {0, 0, 0}, {0, 0, 0});
  EXPECT_EQ(search().open, 3U);
}

TEST_F(EdgesTest, CornersThatNearlyMeetLeaveTwoOpenEdges) {
  add({0, 0, 0}, {1, 0, 0}, {0, 1, 0});
  add({1, 0, 0}, {std::nextafter(0.0F, 1.0F), 0, 0}, {0, -1, 0});
  EXPECT_EQ(search().open, 6U);
}

TEST_F(EdgesTest, ZeroIsOnePlaceWhateverItsSign) {
  add({0.0F, -0.0F, 0.0F}, {1, 0.0F, -0.0F}, {-0.0F, 1, 0});
  add({1, -0.0F, 0.0F}, {-0.0F, 0.0F, -0.0F}, {0, -1, 0});
  const EdgeSearch found = search();
  EXPECT_EQ(found.open, 4U);
  EXPECT_EQ(found.sharp.size(), 4U);
  add({0.0F, -0.0F, 0.0F}, {1, -0.0F, 0.0F}, {0.0F, 1, -0.0F});
  EXPECT_EQ(search().duplicated, 1U);
}

TEST_F(EdgesTest, EdgesBelongToTheLowestTriangleAndOnlyWhereItIsAsked) {
  add({0, 0, 0}, {1, 0, 0}, {0, 0, 1}, false);
  add({1, 0, 0}, {0, 0, 0}, {0, 1, 0});
  const EdgeSearch found = search();
  // The crease is the first one's, and counted where that one is asked.
  EXPECT_EQ(found.creases, 0U);
  EXPECT_EQ(found.open, 2U);
  candidates[0].asked = true;
  EXPECT_EQ(search().creases, 1U);
  EXPECT_EQ(search().open, 4U);
}

TEST_F(EdgesTest, TheOrderOfTrianglesDoesNotMatter) {
  add_cube();
  add_square({5, 0, 0}, {6, 0, 0}, {6, 1, 0}, {5, 1, 0});
  add({5, 0, 0}, {6, 0, 0}, {6, 1, 0});
  const EdgeSearch first = search();
  std::mt19937 random(3);
  for (int i = 0; i < 10; ++i) {
    std::shuffle(candidates.begin(), candidates.end(), random);
    const EdgeSearch again = search();
    EXPECT_EQ(again.open, first.open);
    EXPECT_EQ(again.creases, first.creases);
    EXPECT_EQ(again.duplicated, first.duplicated);
    EXPECT_EQ(again.sharp.size(), first.sharp.size());
  }
}

TEST_F(EdgesTest, NoTrianglesHaveNoEdges) {
  EXPECT_TRUE(search().sharp.empty());
}

}  // namespace
}  // namespace linewright
