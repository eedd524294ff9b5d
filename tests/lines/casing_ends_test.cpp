// The ends of a casing, and where the pin on its wire goes.

#include "lines/casing_ends.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "model/angle.hpp"
#include "rules/casing_project.hpp"

namespace linewright {
namespace {

/// Those of the first route; the project is kept by whoever asks.
std::array<CasingEnd, 2> ends_of(const PreparedProject& prepared) {
  return casing_ends(prepared.routes.front()).value();
}

// Forward is toward smaller FS: out at `from`, which is the forward end, and in at `to`.
TEST(CasingEnds, AreReachedByTheTravelOfTheWire) {
  SmallProject project = casing_project();
  throttle(project).travel = Travel{1, 2, {}};
  const PreparedProject prepared = prepare(project.project);
  const auto [from, to] = ends_of(prepared);
  EXPECT_EQ(from.out, (Vec3{-1, 0, 0}));
  EXPECT_EQ(to.out, (Vec3{1, 0, 0}));
  EXPECT_EQ(from.most_in, 4);
  EXPECT_EQ(from.least_in, 1);
  EXPECT_EQ(to.most_in, 5);
  EXPECT_EQ(to.least_in, 2);
  EXPECT_EQ(to.pin(), (Vec3{143, 0, 10}));
}

// What the wire is pushed out at one end is drawn in at the other, whatever way the casing is led.
TEST(CasingEnds, OfACasingThatTurnsBackFollowItsFromEnd) {
  SmallProject project = casing_project({corner({160, 0, 10}), corner({160, 40, 10})});
  project.project.nodes[1].at = {120, 40, 10};
  throttle(project).travel = Travel{1, 2, {}};
  const PreparedProject prepared = prepare(project.project);
  const auto [from, to] = ends_of(prepared);
  EXPECT_EQ(from.most_in, 4);
  EXPECT_EQ(to.most_in, 5);
  EXPECT_NEAR(to.out.x, -1, 1e-12);
}

TEST(CasingEnds, AreNotKnownOfOtherLinesNorWithoutTravelOrRunOut) {
  SmallProject project = casing_project();
  throttle(project).run_out.reset();
  const PreparedProject prepared = prepare(project.project);
  EXPECT_FALSE(casing_ends(prepared.routes.front()));
  EXPECT_EQ(missing_of_casing(prepared.routes.front()), "the run_out of throttle");
}

SmallProject on_arm(Vec3 pivot, Travel travel) {
  SmallProject project = casing_project();
  throttle(project).travel = travel;
  throttle(project).run_out->to_arm = Arm{pivot, {0, 1, 0}};
  return project;
}

PinWay way_of(const SmallProject& project) {
  const PreparedProject prepared = prepare(project.project);
  return pin_way(ends_of(prepared)[1]).value();
}

// At every place the pin is on its circle; at the ends of the way it is as far from the casing as
// the wire stands out there.
TEST(PinWay, IsAsFarFromTheCasingAsTheWireStandsOut) {
  const PinWay way = way_of(on_arm({143, 0, 8}, {1, 1.5, {}}));
  EXPECT_TRUE(way.reaches);
  EXPECT_NEAR(distance(way.places.front(), {140, 0, 10}), 2, 1e-9);
  EXPECT_NEAR(distance(way.places.back(), {140, 0, 10}), 4.5, 1e-9);
  for (const Vec3 place : way.places) EXPECT_NEAR(distance(place, {143, 0, 8}), 2, 1e-9);
  for (std::size_t i = 1; i < way.places.size(); ++i)
    EXPECT_LE(distance(way.places[i - 1], way.places[i]), pin_places_apart_in);
  EXPECT_LE(way.stray_in, pin_places_apart_in / 2);
}

// Hardly pushed, an arm of 1000 in leaves the wire all but straight.
TEST(PinWay, OfALongArmIsStraight) {
  EXPECT_LT(way_of(on_arm({143, 0, -990}, {1, 1, {}})).most_angle_deg, 0.02);
}

// Law of cosines: 4.5 in from the casing's end and 2 in from the pivot, which are √13 in apart.
TEST(PinWay, LeavesTheLineOfTheCasingByTheAngleOfItsTriangle) {
  const double between = std::acos((4.5 * 4.5 + 13 - 4) / (2 * 4.5 * std::sqrt(13)));
  const double off_deg = (std::atan2(2, 3) - between) * degrees_per_radian;
  EXPECT_NEAR(way_of(on_arm({143, 0, 8}, {0, 1.5, {}})).most_angle_deg, off_deg, 1e-9);
}

TEST(PinWay, EndsWhereTheArmCanGoNoFarther) {
  EXPECT_FALSE(way_of(on_arm({143, 0, 8}, {0, 3, {}})).reaches);
  EXPECT_TRUE(way_of(on_arm({143, 0, 8}, {0, 2.6, {}})).reaches);
}

TEST(PinWay, IsNoneWhereThePinLiesOnItsAxis) {
  const SmallProject project = on_arm({143, 5, 10}, {1, 1, {}});
  const PreparedProject prepared = prepare(project.project);
  EXPECT_FALSE(pin_way(ends_of(prepared)[1]));
}

}  // namespace
}  // namespace linewright
