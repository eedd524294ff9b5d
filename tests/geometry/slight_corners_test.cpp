// Which corners are no bends. A corner in the middle between two others, `apart` from each, that
// stands `off` their straight line turns by 2 atan(off / apart).

#include "geometry/slight_corners.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace linewright {
namespace {

constexpr double degree = 3.14159265358979323846 / 180;
constexpr double tolerance_in = 0.0625;

std::vector<bool> slight(const std::vector<Vec3>& places, double within_in = tolerance_in) {
  std::vector<PathCorner> corners;
  for (const Vec3 place : places) corners.push_back({place, 1});
  return slight_corners(corners, std::vector<bool>(corners.size(), true), within_in);
}

/// Corners `leg_in` apart that each turn by so much in one plane, the first leg along x.
std::vector<Vec3> turning(int corners, double turn_deg, double leg_in) {
  std::vector<Vec3> places{{0, 0, 0}};
  double heading = 0;
  for (int i = 0; i <= corners; ++i) {
    const Vec3 along{std::cos(heading), std::sin(heading), 0};
    places.push_back(places.back() + along * leg_in);
    heading += turn_deg * degree;
  }
  return places;
}

int count(const std::vector<bool>& answers) {
  int all = 0;
  for (const bool answer : answers) all += answer ? 1 : 0;
  return all;
}

TEST(SlightCorners, AStraightLineMissesThemByLessThanTheTolerance) {
  EXPECT_EQ(slight({{0, 0, 0}, {10, 0.0624, 0}, {20, 0, 0}}),
            (std::vector<bool>{false, true, false}));
  EXPECT_EQ(slight({{0, 0, 0}, {10, 0.0625, 0}, {20, 0, 0}}),
            (std::vector<bool>{false, false, false}));
  EXPECT_EQ(count(slight({{0, 0, 0}, {10, 0.0624, 0}, {20, 0, 0}}, 0)), 0);
}

// At legs of an inch 0.0262 in off turn by 3.0 degrees: 2 atan(0.0262) = 3.0017 deg.
TEST(SlightCorners, WhatTurnsMoreThanThreeDegreesIsMeant) {
  EXPECT_EQ(count(slight({{0, 0, 0}, {1, 0.0261, 0}, {2, 0, 0}})), 1);
  EXPECT_EQ(count(slight({{0, 0, 0}, {1, 0.0262, 0}, {2, 0, 0}})), 0);
}

TEST(SlightCorners, OnlyWhatMayBeSlightIs) {
  const std::vector<PathCorner> corners{{{0, 0, 0}}, {{10, 0.01, 0}}, {{20, 0, 0}}};
  EXPECT_EQ(count(slight_corners(corners, {true, false, true}, tolerance_in)), 0);
  EXPECT_EQ(count(slight_corners(corners, {true, true, true}, tolerance_in)), 1);
}

TEST(SlightCorners, TwentyCornersOfOneDegreeAreABend) {
  for (const double leg_in : {0.05, 0.2, 0.5, 1.0, 2.0, 3.0, 5.0, 12.0})
    EXPECT_EQ(count(slight(turning(20, 1, leg_in))), 0) << leg_in;
}

TEST(SlightCorners, AnSOfSmallCornersIsTwoBends) {
  std::vector<Vec3> places = turning(10, 1, 2);
  const Vec3 end = places.back();
  for (int i = 9; i >= 0; --i) {
    const double heading = i * degree;
    places.push_back(places.back() + Vec3{std::cos(heading), std::sin(heading), 0} * 2);
  }
  ASSERT_GT(distance(places.back(), end), 10);
  EXPECT_EQ(count(slight(places)), 0);
}

// To and fro by half of a sixteenth, as holes measured one by one come out.
TEST(SlightCorners, ManyThatGoToAndFroAreNone) {
  std::vector<Vec3> places;
  for (int i = 0; i <= 20; ++i) places.push_back({i * 10.0, i % 2 == 0 ? 0.0 : 0.03, 0});
  EXPECT_EQ(count(slight(places)), 19);
}

// The bend at x = 50 is 0.5 in off; those beside it are 0.01 in off the legs.
TEST(SlightCorners, BesideABendTheOthersAreStillNone) {
  const std::vector<bool> found =
      slight({{0, 0, 0}, {25, 0.26, 0}, {50, 0.5, 0}, {75, 0.26, 0}, {100, 0, 0}});
  EXPECT_EQ(found, (std::vector<bool>{false, true, false, true, false}));
}

TEST(SlightCorners, TheLineRunsPastAllOfThemAtOnce) {
  // Each is within 0.04 in of the line between its neighbours, and the middle one 0.12 in off.
  const std::vector<bool> found =
      slight({{0, 0, 0}, {20, 0.08, 0}, {40, 0.12, 0}, {60, 0.08, 0}, {80, 0, 0}});
  EXPECT_LT(count(found), 3);
}

TEST(SlightCorners, InALongerRowThanAnyTapeMeasuresAllStay) {
  std::vector<Vec3> places;
  for (int i = 0; i <= 600; ++i) places.push_back({i * 1.0, i % 2 == 0 ? 0.0 : 0.01, 0});
  EXPECT_EQ(count(slight(places)), 0);
}

// Whatever the path: a line through the corners that stay passes all others within the tolerance,
// and between any two of those that stay no row of others turns by more than three degrees.
TEST(SlightCorners, TheLineThroughTheRestIsNearToAllOfThem) {
  std::mt19937 random(8);
  std::uniform_real_distribution<double> off(-0.1, 0.1);
  std::uniform_real_distribution<double> leg(1, 15);
  int found = 0;
  for (int path = 0; path < 2000; ++path) {
    std::vector<Vec3> places{{0, 0, 0}};
    for (int i = 0; i < 12; ++i)
      places.push_back({places.back().x + leg(random), off(random), off(random)});
    const std::vector<bool> answers = slight(places);
    ASSERT_FALSE(answers.front() || answers.back());
    std::size_t before = 0;
    for (std::size_t after = 1; after < places.size(); ++after) {
      if (answers[after]) continue;
      const Vec3 along = unit(places[after] - places[before]);
      for (std::size_t i = before + 1; i < after; ++i) {
        ++found;
        ASSERT_LT(norm(cross(places[i] - places[before], along)), tolerance_in);
        ASSERT_LT(angle_between_rad(places[i] - places[i - 1], places[i + 1] - places[i]),
                  3 * degree + 1e-9);
      }
      before = after;
    }
  }
  EXPECT_GT(found, 1000);
}

}  // namespace
}  // namespace linewright
