// Where a pushrod goes between its two arms, and how its ends tilt.

#include "lines/rod_way.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "geometry/distance.hpp"
#include "model/angle.hpp"
#include "rules/rod_project.hpp"

namespace linewright {
namespace {

RodWay way_of(const SmallProject& project) {
  const PreparedProject prepared = prepare(project.project);
  return rod_way(prepared.routes.front());
}

// Arms of 3 in and 1.5 in of travel: each turns 30 degrees, and the rod comes 3 (1 − cos 30) down.
TEST(RodWay, OfTwoLikeArmsIsThatOfItsFromEnd) {
  const RodWay way = way_of(rod_project(1.5));
  ASSERT_EQ(way.fault, RodFault::none);
  const double down = 3 * (1 - std::cos(radians_of(30)));
  EXPECT_LT(distance(way.places.front().from, {98.5, 0, 10 - down}), 1e-9);
  EXPECT_LT(distance(way.places.front().to, {138.5, 0, 10 - down}), 1e-9);
  EXPECT_LT(distance(way.places.back().from, {101.5, 0, 10 - down}), 1e-9);
  EXPECT_LT(distance(way.places.back().to, {141.5, 0, 10 - down}), 1e-9);
}

TEST(RodWay, KeepsTheRodsLength) {
  for (const RodPlace& place : way_of(rod_project(1.5, 3, 2)).places)
    EXPECT_NEAR(distance(place.from, place.to), 40, 1e-9);
}

// An arm of 1 in cannot move the rod by 1.5.
TEST(RodWay, EndsWhereAnArmCannotFollow) {
  EXPECT_EQ(way_of(rod_project(1.5, 3, 1)).fault, RodFault::cannot_follow);
  EXPECT_EQ(way_of(rod_project(0.9, 3, 1)).fault, RodFault::none);
}

TEST(RodWay, EndsWhereItsOwnArmIsTooShort) {
  EXPECT_EQ(way_of(rod_project(1.5, 1, 3)).fault, RodFault::from_too_short);
}

// The arm at `to` stands a degree off the line of the rod. On the way one of the two sides lies
// dead centre, though the ends of the travel are no more than 0.05 in from neutral.
TEST(RodWay, IsShownForTheWholeOfTheTravel) {
  SmallProject project = rod_project(0.05, 3, 3);
  project.project.nodes[1].arm->pivot = {140 - 3 * std::cos(radians_of(1)), 0,
                                         10 - 3 * std::sin(radians_of(1))};
  EXPECT_EQ(way_of(project).fault, RodFault::cannot_follow);
}

TEST(RodWay, IsUnknownWithoutArmsOrTravel) {
  SmallProject project = rod_project(1.5);
  project.project.nodes[1].arm.reset();
  EXPECT_EQ(way_of(project).missing, "the arm of horn");
  project = rod_project(1.5);
  project.project.routes[0].travel.reset();
  EXPECT_EQ(way_of(project).missing, "the travel of elevator-rod");
}

TEST(RodWay, CannotBeFollowedByAnArmOfNoLength) {
  SmallProject project = rod_project(1.5);
  project.project.nodes[1].arm = Arm{{140, 0, 10}, {0, 1, 0}};
  EXPECT_EQ(way_of(project).fault, RodFault::cannot_follow);
}

/// The end of the rod from a place of its `from` end by halving: on the arc of its arm about where
/// it was last.
double followed_rad(const Node& node, Vec3 from, double length_in, double last_rad) {
  const Vec3 axis = unit(node.arm->axis);
  const Vec3 outward = node.at - node.arm->pivot;
  const auto place = [&](double angle) {
    const Vec3 along = axis * dot(outward, axis);
    const Vec3 across = outward - along;
    return node.arm->pivot + along + across * std::cos(angle) +
           cross(axis, across) * std::sin(angle);
  };
  const auto off = [&](double angle) { return distance(from, place(angle)) - length_in; };
  double low = last_rad - 0.05;
  double high = last_rad + 0.05;
  if (off(low) * off(high) > 0) throw std::runtime_error("lost the end of the rod");
  for (int i = 0; i < 60; ++i) {
    const double middle = (low + high) / 2;
    (off(middle) * off(low) > 0 ? low : high) = middle;
  }
  return low;
}

Vec3 turned_about(const Node& node, double angle) {
  const Vec3 axis = unit(node.arm->axis);
  const Vec3 outward = node.at - node.arm->pivot;
  const Vec3 along = axis * dot(outward, axis);
  const Vec3 across = outward - along;
  return node.arm->pivot + along + across * std::cos(angle) + cross(axis, across) * std::sin(angle);
}

// Linkages with arms of 2 to 5 in on axes that lean up to 30 degrees, followed in steps of a
// two hundredth of the way: both ends stay within the bound of one of the places, the same for
// both.
TEST(RodWay, BoundsWhatIsBetweenItsPlaces) {
  std::mt19937 random(20);
  std::uniform_real_distribution<double> any(-1, 1);
  int followed = 0;
  for (int round = 0; round < 30; ++round) {
    SmallProject project =
        rod_project(1.2, 3.5 + 1.5 * any(random), 3.5 + 1.5 * any(random), 130 + 10 * any(random));
    for (Node& node : project.project.nodes)
      node.arm->axis = {0.5 * any(random), 1, 0.5 * any(random)};
    const RodWay way = way_of(project);
    if (way.fault != RodFault::none) continue;
    ++followed;
    const Node& from = project.project.nodes[0];
    const Node& to = project.project.nodes[1];
    const double length = distance(from.at, to.at);
    EXPECT_LE(way.stray_in, most_stray_in);
    for (const double end : {way.places.front().from_rad, way.places.back().from_rad}) {
      double to_rad = 0;
      for (int step = 0; step <= 200; ++step) {
        const Vec3 at = turned_about(from, end * step / 200);
        to_rad = followed_rad(to, at, length, to_rad);
        const Vec3 other = turned_about(to, to_rad);
        double nearest_in = 1e9;
        for (const RodPlace& place : way.places)
          nearest_in =
              std::min(nearest_in, std::max(distance(place.from, at), distance(place.to, other)));
        EXPECT_LE(nearest_in, way.stray_in + 1e-9);
      }
    }
  }
  EXPECT_GT(followed, 20);
}

// Drawn square to both arms, and after 1.5 in on arms of 3 in 60 degrees from their line.
TEST(RodWay, SaysHowFarItsArmsAreFromDeadCentre) {
  const SmallProject project = rod_project(1.5);
  const PreparedProject prepared = prepare(project.project);
  const PreparedRoute& route = prepared.routes.front();
  EXPECT_NEAR(off_dead_centre_deg(route, rod_way(route).places.back()), 60, 1e-6);
}

double tilt_toward(const SmallProject& project, Vec3 direction) {
  const PreparedProject prepared = prepare(project.project);
  const Vec3 from{100, 0, 10};
  return end_tilt_deg(prepared.routes.front(), {from, from + unit(direction) * 40, 0, 0});
}

TEST(RodEnds, DoNotTiltInThePlaneThatTheirBoltsStandSquareTo) {
  EXPECT_NEAR(tilt_toward(rod_project(1.5), {1, 0, 0.2}), 0, 1e-9);
}

TEST(RodEnds, TiltByWhatTheirBoltsLeanToTheRod) {
  EXPECT_NEAR(
      tilt_toward(rod_project(1.5), {std::cos(radians_of(20)), std::sin(radians_of(20)), 0}), 20,
      1e-9);
}

// Bolts along BL and WL on a rod along FS stand a quarter turn from each other. Where the rod goes
// along (1, 1, 1) both lean asin(1/√3) = 35.264 degrees and stand 120 degrees from each other: each
// end rolls 15 degrees, and acos(cos 35.264 cos 15) = 37.94 [calculated].
TEST(RodEnds, ShareWhatTheirBoltsTwist) {
  SmallProject project = rod_project(1.5);
  project.project.nodes[1].arm = Arm{{140, 3, 10}, {0, 0, 1}};
  const double lean = std::asin(1 / std::sqrt(3.0));
  const double tilt = std::acos(std::cos(lean) * std::cos(radians_of(15))) * degrees_per_radian;
  EXPECT_NEAR(tilt, 37.94, 0.01);
  EXPECT_NEAR(tilt_toward(project, {1, 1, 1}), tilt, 1e-6);
}

}  // namespace
}  // namespace linewright
