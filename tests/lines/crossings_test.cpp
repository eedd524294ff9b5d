#include "lines/crossings.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "oracles/random_path.hpp"

namespace linewright {
namespace {

constexpr double pi = std::numbers::pi;
// Sums and products of lengths under 100 in.
constexpr double rounding_in = 1e-12;

Frame frame(const std::string& name, double station) {
  Frame result;
  result.name = name;
  result.plane = at_station(station);
  result.thickness_in = 0.032;
  result.outline = {{-5, -5}, {5, -5}, {5, 5}, {-5, 5}};
  result.holes.push_back({name + "-round", Circle{{2, 2}, 1}, EdgeGuard::bare, {}, {}});
  result.holes.push_back({name + "-square",
                          std::vector<Vec2>{{-3, -3}, {-1, -3}, {-1, -1}, {-3, -1}},
                          EdgeGuard::bare,
                          {},
                          {}});
  return result;
}

std::vector<double> crossings_at(const Centreline& path, double station) {
  return plane_crossings(path, at_station(station));
}

Centreline straight(Vec3 from, Vec3 to) {
  return Centreline({{from, 0}, {to, 0}});
}

// A quarter turn of 2 in radius: straight to FS 8, then round (8, 2) to (10, 2).
const Centreline quarter_turn({{{0, 0, 0}, 0}, {{10, 0, 0}, 2}, {{10, 10, 0}, 0}});

TEST(PlaneCrossings, LieInProportionOnASlantedStraight) {
  const auto found = crossings_at(straight({0, 0, 0}, {3, 4, 0}), 1.5);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(found[0], 2.5, rounding_in);
}

TEST(PlaneCrossings, AreTheSameForALineThatRunsForward) {
  const auto found = crossings_at(straight({3, 4, 0}, {0, 0, 0}), 0.75);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(found[0], 3.75, rounding_in);
}

TEST(PlaneCrossings, AreSolvedOnTheArcOfAQuarterTurn) {
  // FS = 8 + 2 sin(angle): 9 at 30 degrees, a third of the quarter.
  const auto found = crossings_at(quarter_turn, 9);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(found[0], 8 + 2 * pi / 6, rounding_in);
  const Vec3 at = quarter_turn.at(found[0]);
  EXPECT_NEAR(at.x, 9, rounding_in);
  EXPECT_NEAR(at.y, 2 - std::sqrt(3.0), rounding_in);
}

TEST(PlaneCrossings, AreTwoWhereAnArcGoesThroughAndComesBack) {
  // Turns at FS 10 from outward to inward, 45 degrees to the plane each way: the arc's middle is at
  // (10 - 2 root 2, 10) and the plane root 3 further cuts it 30 degrees to each side of its top.
  const Centreline path({{{0, 0, 0}, 0}, {{10, 10, 0}, 2}, {{0, 20, 0}, 0}});
  const double middle = std::hypot(10, 10) - 2 + 2 * pi / 4;
  const auto found = crossings_at(path, 10 - 2 * std::numbers::sqrt2 + std::numbers::sqrt3);
  ASSERT_EQ(found.size(), 2u);
  EXPECT_NEAR(found[0], middle - 2 * pi / 6, 1e-11);
  EXPECT_NEAR(found[1], middle + 2 * pi / 6, 1e-11);
}

TEST(PlaneCrossings, AreNoneBeyondTheTopOfAnArcAndTwoBelowIt) {
  const Centreline path({{{0, 0, 0}, 0}, {{10, 10, 0}, 2}, {{0, 20, 0}, 0}});
  const double top = 10 - 2 * std::numbers::sqrt2 + 2;
  EXPECT_TRUE(crossings_at(path, top + 1e-9).empty());
  EXPECT_EQ(crossings_at(path, top - 1e-9).size(), 2u);
}

TEST(PlaneCrossings, CountOnceWhereAStraightMeetsItsArc) {
  for (const double station : {8.0, 10.0 - 1e-15, 8.0 + 1e-15, 8.0 - 1e-15})
    EXPECT_EQ(crossings_at(quarter_turn, station).size(), 1u) << station;
}

TEST(PlaneCrossings, CountOnceAtASharpCorner) {
  const Centreline path({{{0, 0, 0}, 0}, {{5, 0, 0}, 0}, {{10, 5, 0}, 0}});
  EXPECT_EQ(crossings_at(path, 5).size(), 1u);
}

TEST(PlaneCrossings, LeaveOutTheEndsOfTheLine) {
  EXPECT_TRUE(crossings_at(straight({0, 0, 0}, {10, 0, 0}), 0).empty());
  EXPECT_TRUE(crossings_at(straight({0, 0, 0}, {10, 0, 0}), 10).empty());
  EXPECT_EQ(crossings_at(straight({0, 0, 0}, {10, 0, 0}), 1e-6).size(), 1u);
}

TEST(PlaneCrossings, AreNoneForALineThatRunsInThePlane) {
  EXPECT_TRUE(crossings_at(straight({5, 0, 0}, {5, 10, 0}), 5).empty());
}

/// How often the sampled path changes sides.
std::size_t changes_of_side(const Centreline& path, double station, int samples) {
  std::size_t changes = 0;
  bool before = path.at(0).x > station;
  for (int i = 1; i <= samples; ++i) {
    const bool now = path.at(path.length_in() * i / samples).x > station;
    changes += now != before ? 1 : 0;
    before = now;
  }
  return changes;
}

TEST(PlaneCrossings, LieInThePlaneAndMissNoChangeOfSide) {
  oracles::Random random(20261125);
  for (int round = 0; round < 300; ++round) {
    const Centreline path(oracles::fitting_path(random, random.whole(2, 7)));
    const double station = path.at(path.length_in() * random.between(0.02, 0.98)).x;
    const auto found = crossings_at(path, station);
    // Sampled every 1/20 in or closer, a dip through the plane and back can be missed, by pairs.
    const std::size_t changes = changes_of_side(path, station, 1000);
    EXPECT_GE(found.size(), changes) << "round " << round;
    EXPECT_EQ((found.size() - changes) % 2, 0u) << "round " << round;
    // Positions up to 100 in along paths of up to a few hundred.
    for (const double distance : found) EXPECT_NEAR(path.at(distance).x, station, 1e-9);
    for (std::size_t i = 1; i < found.size(); ++i) EXPECT_GT(found[i], found[i - 1]);
  }
}

TEST(FindCrossings, NamesTheHoleTheLineGoesThrough) {
  const std::vector<Frame> frames{frame("F1", 5)};
  const auto round = find_crossings(straight({0, 2.2, 2}, {10, 2.2, 2}), frames);
  ASSERT_EQ(round.size(), 1u);
  ASSERT_NE(round[0].hole, nullptr);
  EXPECT_EQ(round[0].hole->name, "F1-round");
  EXPECT_EQ(round[0].at, (Vec3{5, 2.2, 2}));
  EXPECT_NEAR(round[0].distance_in, 5, rounding_in);
  const auto square = find_crossings(straight({0, -2, -2}, {10, -2, -2}), frames);
  ASSERT_EQ(square.size(), 1u);
  ASSERT_NE(square[0].hole, nullptr);
  EXPECT_EQ(square[0].hole->name, "F1-square");
}

TEST(FindCrossings, HasNoHoleWhereTheLineGoesThroughTheWeb) {
  const std::vector<Frame> frames{frame("F1", 5)};
  const auto found = find_crossings(straight({0, 0, 0}, {10, 0, 0}), frames);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].frame, &frames[0]);
  EXPECT_EQ(found[0].hole, nullptr);
}

TEST(FindCrossings, LeavesOutWhatPassesOutsideTheOutline) {
  EXPECT_TRUE(find_crossings(straight({0, 5.1, 0}, {10, 5.1, 0}), {frame("F1", 5)}).empty());
}

TEST(FindCrossings, JudgesAnArcWhereItIsAndNotWhereItsCornerIs) {
  // The quarter turn meets FS 9 at BL 0.268; its drawn leg would meet it at BL 0.
  Frame web = frame("F1", 9);
  web.holes = {{"at-arc", Circle{{2 - std::sqrt(3.0), 0}, 0.1}, EdgeGuard::bare, {}, {}}};
  const std::vector<Frame> frames{web};
  const auto found = find_crossings(quarter_turn, frames);
  ASSERT_EQ(found.size(), 1u);
  ASSERT_NE(found[0].hole, nullptr);
}

TEST(FindCrossings, AreInOrderAlongTheLineWhateverTheOrderOfFrames) {
  const std::vector<Frame> frames{frame("F3", 30), frame("F1", 10), frame("F2", 20)};
  const auto aft = find_crossings(straight({0, 0, 0}, {40, 0, 0}), frames);
  ASSERT_EQ(aft.size(), 3u);
  EXPECT_EQ(aft[0].frame->name, "F1");
  EXPECT_EQ(aft[2].frame->name, "F3");
  const auto forward = find_crossings(straight({40, 0, 0}, {0, 0, 0}), frames);
  ASSERT_EQ(forward.size(), 3u);
  EXPECT_EQ(forward[0].frame->name, "F3");
  EXPECT_NEAR(forward[0].distance_in, 10, rounding_in);
}

}  // namespace
}  // namespace linewright
