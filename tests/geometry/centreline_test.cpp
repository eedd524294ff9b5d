// The filleted path on shapes that can be checked by hand. Tolerances of 1e-12 in are some tens of
// roundings of a coordinate of ten inches.

#include "geometry/centreline.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>

namespace linewright {
namespace {

using std::numbers::pi;

void expect_near(Vec3 actual, Vec3 expected, double tolerance = 1e-12) {
  EXPECT_NEAR(actual.x, expected.x, tolerance);
  EXPECT_NEAR(actual.y, expected.y, tolerance);
  EXPECT_NEAR(actual.z, expected.z, tolerance);
}

/// Ten inches aft, eight to the right, bent on `radius_in`.
Centreline right_angle(double radius_in) {
  return Centreline({{{0, 0, 0}, 0}, {{10, 0, 0}, radius_in}, {{10, 8, 0}, 0}});
}

/// Out along x, up the side `side_in`, and back or on: two right angles of the same radius.
Centreline two_bends(double side_in, double radius_in, double last_x) {
  return Centreline({{{0, 0, 0}, 0},
                     {{10, 0, 0}, radius_in},
                     {{10, side_in, 0}, radius_in},
                     {{last_x, side_in, 0}, 0}});
}

TEST(Centreline, StraightLineIsAsLongAsTheDistanceBetweenItsEnds) {
  EXPECT_DOUBLE_EQ(Centreline({{{0, 0, 0}, 0}, {{3, 4, 0}, 0}}).length_in(), 5);
  const Centreline line({{{1, 1, 1}, 0}, {{2, 3, 3}, 0}});
  EXPECT_DOUBLE_EQ(line.length_in(), 3);
  EXPECT_DOUBLE_EQ(line.straight_after_in(), 3);
  EXPECT_TRUE(line.bends().empty());
  ASSERT_EQ(line.pieces().size(), 1u);
  expect_near(line.at(1.5), {1.5, 2, 2});
  expect_near(line.direction(1.5), {1.0 / 3, 2.0 / 3, 2.0 / 3});
}

TEST(Centreline, RightAngleIsLegsLessTwoRadiiPlusAQuarterCircle) {
  const Centreline line = right_angle(2);
  EXPECT_NEAR(line.length_in(), 10 + 8 - 2 * 2 + pi * 2 / 2, 1e-12);
  ASSERT_EQ(line.pieces().size(), 3u);
  const PathPiece& arc = line.pieces()[1];
  EXPECT_TRUE(arc.is_arc);
  EXPECT_DOUBLE_EQ(arc.radius_in, 2);
  expect_near(arc.from, {8, 0, 0});
  expect_near(arc.to, {10, 2, 0});
  expect_near(arc.centre, {8, 2, 0});
  // Half way round at 45 degrees.
  expect_near(line.at(8 + pi / 2), {8 + std::sqrt(2.0), 2 - std::sqrt(2.0), 0});
  expect_near(line.direction(8 + pi / 2), {std::sqrt(0.5), std::sqrt(0.5), 0});
}

TEST(Centreline, BendRecordsAngleTangentPlaceAndStraights) {
  const Centreline line = right_angle(2);
  ASSERT_EQ(line.bends().size(), 1u);
  const Bend& bend = line.bends()[0];
  EXPECT_EQ(bend.corner, 1);
  EXPECT_NEAR(bend.angle_rad, pi / 2, 1e-15);
  EXPECT_NEAR(bend.tangent_in, 2, 1e-14);
  EXPECT_DOUBLE_EQ(bend.built_radius_in, 2);
  EXPECT_NEAR(bend.start_in, 8, 1e-14);
  EXPECT_NEAR(bend.end_in, 8 + pi, 1e-14);
  EXPECT_NEAR(bend.straight_before_in, 8, 1e-14);
  EXPECT_NEAR(line.straight_after_in(), 6, 1e-14);
  EXPECT_TRUE(bend.fits);
}

TEST(Centreline, SixtyDegreeTurnUsesTheTangentOfHalfTheAngle) {
  // Turning 60 degrees on 3 in takes a tangent of 3 tan 30° = √3.
  const Centreline line({{{0, 0, 0}, 0}, {{10, 0, 0}, 3}, {{10 + 5, 5 * std::sqrt(3.0), 0}, 0}});
  EXPECT_NEAR(line.bends()[0].tangent_in, std::sqrt(3.0), 1e-14);
  EXPECT_NEAR(line.length_in(), 10 + 10 - 2 * std::sqrt(3.0) + pi, 1e-12);
}

TEST(Centreline, UShapeMayCloseUpToAHalfCircle) {
  const Centreline line = two_bends(4, 2, 0);
  EXPECT_NEAR(line.length_in(), 8 + 2 * pi + 8, 1e-12);
  EXPECT_EQ(line.pieces().size(), 4u) << "two straights and two arcs with nothing between";
  EXPECT_TRUE(line.bends()[0].fits);
  EXPECT_TRUE(line.bends()[1].fits);
  EXPECT_NEAR(line.bends()[1].straight_before_in, 0, 1e-14);
  for (double along = 8; along <= 8 + 2 * pi; along += 0.25)
    EXPECT_NEAR(distance(line.at(along), {8, 2, 0}), 2, 1e-12);
}

TEST(Centreline, SShapeIsAsLongAsTheUShapeOfTheSameLegs) {
  const Centreline line = two_bends(6, 1.5, 20);
  EXPECT_NEAR(line.length_in(), 10 + 6 + 10 - 4 * 1.5 + pi * 1.5, 1e-12);
  EXPECT_NEAR(line.length_in(), two_bends(6, 1.5, 0).length_in(), 1e-12);
  EXPECT_NEAR(line.bends()[1].straight_before_in, 3, 1e-14);
  expect_near(line.direction(line.length_in()), {1, 0, 0});
}

TEST(Centreline, DistancesBeyondTheEndsGiveTheEnds) {
  const Centreline line = right_angle(2);
  EXPECT_EQ(line.at(-1), (Vec3{0, 0, 0}));
  EXPECT_EQ(line.at(0), (Vec3{0, 0, 0}));
  EXPECT_EQ(line.at(line.length_in()), (Vec3{10, 8, 0}));
  EXPECT_EQ(line.at(1e9), (Vec3{10, 8, 0}));
  expect_near(line.direction(-1), {1, 0, 0});
  expect_near(line.direction(1e9), {0, 1, 0});
}

TEST(Centreline, CornerLiesAtTheMiddleOfItsArc) {
  const Centreline line = right_angle(2);
  EXPECT_EQ(line.corner_distance_in(0), 0);
  EXPECT_NEAR(line.corner_distance_in(1), 8 + pi / 2, 1e-12);
  EXPECT_DOUBLE_EQ(line.corner_distance_in(2), line.length_in());
}

TEST(Centreline, CornerWithoutRadiusStaysSharpAndFits) {
  const Centreline line = right_angle(0);
  EXPECT_DOUBLE_EQ(line.length_in(), 18);
  EXPECT_EQ(line.pieces().size(), 2u);
  ASSERT_EQ(line.bends().size(), 1u);
  const Bend& bend = line.bends()[0];
  EXPECT_TRUE(bend.fits);
  EXPECT_DOUBLE_EQ(bend.start_in, 10);
  EXPECT_DOUBLE_EQ(bend.end_in, 10);
  EXPECT_DOUBLE_EQ(line.corner_distance_in(1), 10);
  EXPECT_DOUBLE_EQ(bend.straight_before_in, 10);
  EXPECT_DOUBLE_EQ(line.straight_after_in(), 8);
  expect_near(line.at(10), {10, 0, 0});
}

TEST(Centreline, TurnOfLessThanAHundredthOfADegreeIsStraight) {
  const auto turning = [](double degrees) {
    const double angle = degrees * pi / 180;
    return Centreline({{{0, 0, 0}, 0},
                       {{10, 0, 0}, 2},
                       {{10 + 5 * std::cos(angle), 5 * std::sin(angle), 0}, 2},
                       {{10 + 5 * std::cos(angle), 9 + 5 * std::sin(angle), 0}, 0}});
  };
  const Centreline straight = turning(0.009);
  ASSERT_EQ(straight.bends().size(), 1u);
  EXPECT_EQ(straight.bends()[0].corner, 2);
  EXPECT_DOUBLE_EQ(straight.corner_distance_in(1), 10);
  // The straight before the bend runs through the corner that does not turn; the bend there turns
  // 0.009° less than a right angle, which shortens its tangent of 2 in by under 0.0004 in.
  EXPECT_NEAR(straight.bends()[0].straight_before_in, 10 + 5 - 2, 4e-4);
  EXPECT_EQ(turning(0.011).bends().size(), 2u);
}

TEST(Centreline, BendsThatCrowdALegShrinkInProportionAndDoNotFit) {
  // A 3 in leg must hold tangents of 2 in and 4 in: each gets half of what it needs.
  const Centreline line({{{0, 0, 0}, 0}, {{10, 0, 0}, 2}, {{10, 3, 0}, 4}, {{30, 3, 0}, 0}});
  ASSERT_EQ(line.bends().size(), 2u);
  EXPECT_FALSE(line.bends()[0].fits);
  EXPECT_FALSE(line.bends()[1].fits);
  EXPECT_NEAR(line.bends()[0].built_radius_in, 1, 1e-12);
  EXPECT_NEAR(line.bends()[1].built_radius_in, 2, 1e-12);
  EXPECT_DOUBLE_EQ(line.bends()[1].drawn_radius_in, 4);
  EXPECT_NEAR(line.bends()[1].straight_before_in, 3 - 2 - 4, 1e-12) << "drawn radii: they overlap";
  EXPECT_NEAR(line.straight_after_in(), 20 - 4, 1e-12);
  EXPECT_NEAR(line.length_in(), 9 + pi / 2 + pi + 18, 1e-12) << "the path as it is built";
}

TEST(Centreline, BendTakesTheSmallerOfWhatItsTwoLegsAllow) {
  // The middle bend could keep 3/4 of its radius on the leg before it but only 1/2 after it.
  const Centreline line(
      {{{0, 0, 0}, 0}, {{10, 0, 0}, 2}, {{10, 3, 0}, 2}, {{12, 3, 0}, 2}, {{12, 20, 0}, 0}});
  ASSERT_EQ(line.bends().size(), 3u);
  EXPECT_NEAR(line.bends()[0].built_radius_in, 1.5, 1e-12);
  EXPECT_NEAR(line.bends()[1].built_radius_in, 1, 1e-12);
  EXPECT_NEAR(line.bends()[2].built_radius_in, 1, 1e-12);
}

TEST(Centreline, BendTooNearAnEndDoesNotFit) {
  const Centreline line({{{0, 0, 0}, 0}, {{1, 0, 0}, 2}, {{1, 8, 0}, 0}});
  EXPECT_FALSE(line.bends()[0].fits);
  EXPECT_NEAR(line.bends()[0].built_radius_in, 1, 1e-12);
  EXPECT_NEAR(line.bends()[0].straight_before_in, -1, 1e-12);
  EXPECT_TRUE(line.pieces().front().is_arc);
}

TEST(Centreline, RoundingOfALegDoesNotMakeABendUnfit) {
  EXPECT_TRUE(two_bends(4 - 5e-10, 2, 0).bends()[0].fits);
  EXPECT_FALSE(two_bends(4 - 2e-9, 2, 0).bends()[0].fits);
}

TEST(Centreline, SharpNeighbourLeavesItsWholeLegToTheBend) {
  const Centreline line({{{0, 0, 0}, 0}, {{10, 0, 0}, 0}, {{10, 2, 0}, 2}, {{30, 2, 0}, 0}});
  EXPECT_TRUE(line.bends()[0].fits);
  EXPECT_TRUE(line.bends()[1].fits);
}

TEST(Centreline, ReversalNeverFitsAndIsBuiltSharp) {
  for (const double radius_in : {0.0, 2.0}) {
    const Centreline line(
        {{{0, 0, 0}, 0}, {{10, 0, 0}, radius_in}, {{4, 0, 0}, 2}, {{4, 9, 0}, 0}});
    ASSERT_EQ(line.bends().size(), 2u);
    EXPECT_FALSE(line.bends()[0].fits);
    EXPECT_EQ(line.bends()[0].built_radius_in, 0);
    EXPECT_DOUBLE_EQ(line.bends()[0].start_in, 10);
    EXPECT_DOUBLE_EQ(line.bends()[0].end_in, 10);
    EXPECT_TRUE(line.bends()[1].fits) << "the bend beside it has room";
    EXPECT_NEAR(line.length_in(), 10 + 6 + 9 - 4 + pi, 1e-12);
  }
}

TEST(Centreline, NearReversalIsShrunkToWhatTheLegsHold) {
  const Centreline line({{{0, 0, 0}, 0}, {{10, 0, 0}, 2}, {{0, 1e-4, 0}, 0}});
  EXPECT_FALSE(line.bends()[0].fits);
  EXPECT_GT(line.bends()[0].built_radius_in, 0);
  EXPECT_LT(line.bends()[0].built_radius_in, 1e-4);
  EXPECT_TRUE(std::isfinite(line.length_in()));
}

TEST(Centreline, RefusesPathsThatLeadNowhere) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_THROW(Centreline({}), std::invalid_argument);
  EXPECT_THROW(Centreline({{{0, 0, 0}, 0}}), std::invalid_argument);
  EXPECT_THROW(Centreline({{{1, 2, 3}, 0}, {{1, 2, 3}, 0}}), std::invalid_argument);
  EXPECT_THROW(Centreline({{{0, 0, 0}, 0}, {{1, nan, 0}, 0}}), std::invalid_argument);
  EXPECT_THROW(Centreline({{{0, 0, 0}, 0}, {{1, 0, 0}, nan}, {{1, 1, 0}, 0}}),
               std::invalid_argument);
}

TEST(Centreline, ChordsOfAStraightAreTheStraight) {
  const Centreline line = right_angle(2);
  const std::vector<PathChord> chords = line.chords(1, 7);
  ASSERT_EQ(chords.size(), 1u);
  expect_near(chords[0].from, {1, 0, 0});
  expect_near(chords[0].to, {7, 0, 0});
  EXPECT_EQ(chords[0].start_in, 1);
  EXPECT_EQ(chords[0].end_in, 7);
}

TEST(Centreline, ArcIsCutIntoAsFewChordsAsTheSagittaAllows) {
  const Centreline line = right_angle(2);
  // Two chords of a quarter circle stand off it by R (1 - cos 22.5°).
  const double sagitta_in = 2 * (1 - std::cos(pi / 8));
  EXPECT_EQ(line.chords(8, 8 + pi, sagitta_in * 1.001).size(), 2u);
  EXPECT_EQ(line.chords(8, 8 + pi, sagitta_in * 0.999).size(), 3u);
  EXPECT_EQ(line.chords(8, 8 + pi, 100).size(), 1u);
}

TEST(Centreline, ChordsOfNothingAreNone) {
  const Centreline line = right_angle(2);
  EXPECT_TRUE(line.chords(5, 5).empty());
  EXPECT_TRUE(line.chords(6, 5).empty());
  EXPECT_TRUE(line.chords(100, 200).empty());
}

}  // namespace
}  // namespace linewright
