// Ends of cables on their arms, worked by hand: an arm of 5 in that turns by the angle of a 3-4-5
// triangle carries its end 3 in along and 1 in down.

#include "lines/arm_swing.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "lines/prepare.hpp"
#include "oracles/random_path.hpp"
#include "rules/cable_project.hpp"

namespace linewright {
namespace {

/// A fairlead at FS 60, and a horn `leg_in` behind it on an arm of 5 in that hangs below the run.
/// The travel is what 3 in along and 1 in down give each way.
SmallProject swinging(double leg_in) {
  SmallProject project =
      cable_project({held({60, 0, 10}, HoldKind::fairlead)}, {60 + leg_in, 0, 10});
  project.project.nodes.back().arm = Arm{{60 + leg_in, 7, 5}, {0, 2, 0}};
  set_travel(project, leg_in - std::hypot(leg_in - 3, 1), std::hypot(leg_in + 3, 1) - leg_in);
  return project;
}

void expect_at(Vec3 at, Vec3 wanted) {
  EXPECT_LT(distance(at, wanted), 1e-9) << at.x << ", " << at.y << ", " << at.z;
}

// Between the steps that are looked at the end bulges by at most 5 in × (1.29 / 64)² / 8.
constexpr double bulge_in = 0.0003;

TEST(ArmSwing, CarriesTheEndRoundItsPivotUntilTheLegIsAsMuchLonger) {
  const SmallProject project = swinging(40);
  const PreparedProject prepared = prepare(project.project);
  const auto swing = arm_swing(prepared.routes[0], RouteEnd::to);
  ASSERT_TRUE(swing.has_value());
  EXPECT_TRUE(swing->reaches);
  EXPECT_EQ(swing->guide, 0);
  expect_at(swing->start, {60, 0, 10});
  expect_at(swing->toward_from, {97, 0, 9});
  expect_at(swing->toward_to, {103, 0, 9});
  EXPECT_GE(swing->sideways_in, 1);
  EXPECT_LE(swing->sideways_in, 1 + bulge_in);
  EXPECT_FALSE(arm_swing(prepared.routes[0], RouteEnd::from).has_value());
}

TEST(ArmSwing, WidensTheReachOfItsSpanFromNothingAtTheGuide) {
  const SmallProject project = swinging(40);
  const PreparedRoute route = prepare(project.project).routes[0];
  ASSERT_EQ(route.supports.size(), 3u);
  EXPECT_EQ(route.supports[0].play_in, 0);
  EXPECT_NEAR(route.supports[2].play_in, 1, bulge_in);
}

TEST(ArmSwing, CountsTheFarthestOnTheWayNotOnlyTheEnds) {
  // From 36.87 degrees short of square the end goes to as much beyond: as far out at both ends, and
  // 1 in farther when square.
  SmallProject project = cable_project({held({60, 0, 10}, HoldKind::fairlead)}, {100, 0, 10});
  project.project.nodes.back().arm = Arm{{103, 0, 6}, {0, 1, 0}};
  set_travel(project, 0, 6);
  const auto swing = arm_swing(prepare(project.project).routes[0], RouteEnd::to);
  ASSERT_TRUE(swing.has_value());
  expect_at(swing->toward_to, {106, 0, 10});
  EXPECT_NEAR(swing->sideways_in, 1, bulge_in);
}

TEST(ArmSwing, ThatCannotReachGoesToItsDeadCentre) {
  SmallProject project = swinging(40);
  set_travel(project, 0, 30);
  const auto swing = arm_swing(prepare(project.project).routes[0], RouteEnd::to);
  ASSERT_TRUE(swing.has_value());
  EXPECT_FALSE(swing->reaches);
  // On the straight from the fairlead through the pivot, 5 in beyond it.
  const Vec3 beyond = unit(Vec3{40, 0, -5});
  expect_at(swing->toward_to, Vec3{100, 0, 5} + beyond * 5);
  // The pivot is sqrt(40² + 5²) in from the fairlead, the end 5 in from the pivot.
  EXPECT_NEAR(swing->gives_toward_to_in, std::hypot(40, 5) + 5 - 40, 1e-9);
  EXPECT_NEAR(swing->gives_toward_from_in, 40 - (std::hypot(40, 5) - 5), 1e-9);
}

TEST(ArmSwing, ThatCannotReachSwingsNothing) {
  SmallProject project = swinging(40);
  set_travel(project, 0, 30);
  const PreparedRoute route = prepare(project.project).routes[0];
  EXPECT_EQ(route.supports.back().play_in, 0);
  EXPECT_EQ(route.supports.back().missing, "an arm at horn that gives the travel");
  EXPECT_EQ(leg_directions(route, 0).size(), 1u);
}

TEST(ArmSwing, IsNotKnownWithoutATravelOrOnATube) {
  SmallProject project = swinging(40);
  the_route(project).travel.reset();
  EXPECT_FALSE(arm_swing(prepare(project.project).routes[0], RouteEnd::to).has_value());
  EXPECT_EQ(prepare(project.project).routes[0].supports.back().play_in, 0);
}

TEST(ArmSwing, LeavesAPulleyWhereTheArcEnds) {
  SmallProject project = cable_project({pulley_at({60, 0, 10}, 2.5, {0, 0, 1})}, {60, 40, 10});
  project.project.nodes.back().arm = Arm{{60, 40, 5}, {1, 0, 0}};
  set_travel(project, 1, 1);
  const auto swing = arm_swing(prepare(project.project).routes[0], RouteEnd::to);
  ASSERT_TRUE(swing.has_value());
  expect_at(swing->start, {60, 1.25, 10});
}

TEST(EndGuide, IsTheNearestPointThatHoldsOrLeadsAndNoBareCorner) {
  SmallProject project = cable_project({corner({10, 0, 10}), held({30, 0, 10}, HoldKind::fairlead),
                                        clamped({60, 0, 10}), corner({80, 0, 10})});
  const PreparedProject prepared = prepare(project.project);
  EXPECT_EQ(end_guide(prepared.routes[0], RouteEnd::from), 1);
  EXPECT_EQ(end_guide(prepared.routes[0], RouteEnd::to), 2);
  const SmallProject straight = cable_project();
  EXPECT_EQ(end_guide(prepare(straight.project).routes[0], RouteEnd::to), -1);
}

TEST(LegDirections, AreTheDrawnOnesAloneWhereNoArmSwingsThem) {
  const SmallProject project = swinging(40);
  const PreparedProject prepared = prepare(project.project);
  const auto legs = leg_directions(prepared.routes[0], 0);
  ASSERT_EQ(legs.size(), 3u);
  expect_at(legs[0].after, {1, 0, 0});
  expect_at(legs[1].after, unit(Vec3{37, 0, -1}));
  expect_at(legs[2].after, unit(Vec3{43, 0, -1}));
  expect_at(legs[2].before, {1, 0, 0});
  SmallProject fixed = project;
  fixed.project.nodes.back().arm.reset();
  EXPECT_EQ(leg_directions(prepare(fixed.project).routes[0], 0).size(), 1u);
}

TEST(RandomArms, MoveTheirEndByTheTravelOnTheirCircleAndNoFartherOffThanIsSaid) {
  oracles::Random random(431);
  int reached = 0;
  for (int round = 0; round < 300; ++round) {
    SmallProject project =
        cable_project({held({60, 0, 10}, HoldKind::fairlead)}, {90, random.between(-5, 5), 12});
    const Vec3 end = project.project.nodes.back().at;
    const Arm arm{end + random.direction() * random.between(2, 6), random.direction()};
    project.project.nodes.back().arm = arm;
    set_travel(project, random.between(0, 1.5), random.between(0, 1.5));
    const PreparedProject prepared = prepare(project.project);
    const auto swing = arm_swing(prepared.routes[0], RouteEnd::to);
    ASSERT_TRUE(swing.has_value());
    if (!swing->reaches) continue;
    ++reached;
    const double drawn = distance(swing->start, end);
    const Travel& travel = *the_route(project).travel;
    EXPECT_NEAR(distance(swing->start, swing->toward_from), drawn - travel.forward_in, 1e-7);
    EXPECT_NEAR(distance(swing->start, swing->toward_to), drawn + travel.aft_in, 1e-7);
    const Vec3 leg = (end - swing->start) / drawn;
    for (const Vec3 at : {swing->toward_from, swing->toward_to}) {
      EXPECT_NEAR(distance(arm.pivot, at), distance(arm.pivot, end), 1e-9);
      EXPECT_NEAR(dot(at - end, arm.axis), 0, 1e-9);
      EXPECT_LE(norm(cross(at - swing->start, leg)), swing->sideways_in + 1e-9);
    }
  }
  EXPECT_GT(reached, 100);
}

}  // namespace
}  // namespace linewright
