// The arm of a cable's end against the sweep of the part that it is on.

#include <cmath>
#include <numbers>

#include "rules/cable_project.hpp"
#include "rules/rod_project.hpp"

namespace linewright {
namespace {

/// The arm of 10 in, square to 100 in of cable, turns by 30 degrees to draw it back by this
/// [calculated]: its end is then 5 in nearer, and 10 (1 - cos 30°) lower.
const double travel_in = 100 - std::hypot(95, 10 - 10 * std::cos(std::numbers::pi / 6));

SmallProject on_bellcrank(double from_deg, double to_deg, Vec3 axis = {0, 1, 0}) {
  SmallProject project = cable_project();
  project.project.nodes.back().arm = Arm{{100, 0, 0}, {0, 1, 0}};
  set_travel(project, travel_in, 0);
  project.project.structure.movers.push_back(
      {"bellcrank", {100, 0, 0}, axis, {{100, 0, 0}, {100, 0, 10}}, 0.2, from_deg, to_deg, {}});
  return project;
}

std::vector<Judgement> fails(const SmallProject& project) {
  std::vector<Judgement> all = project.judged_by("bend-fit");
  std::erase_if(all, [](const Judgement& each) { return each.verdict == Verdict::pass; });
  return all;
}

TEST(ArmSweep, MustReachAsFarAsTheTravelTurnsTheArm) {
  EXPECT_TRUE(fails(on_bellcrank(-30, 0)).empty());
  EXPECT_TRUE(fails(on_bellcrank(-29.01, 0)).empty()) << "axes are told to a degree";
  const Judgement judgement = sole(fails(on_bellcrank(-2, 2)));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, 28, 1e-6);
  EXPECT_EQ(judgement.with, "bellcrank");
  EXPECT_TRUE(contains(judgement.message, "turns the arm at horn by 30.0 deg"))
      << judgement.message;
  expect_complete(judgement);
}

TEST(ArmSweep, CountsTheWayRoundThatTheAxisPoints) {
  EXPECT_EQ(sole(fails(on_bellcrank(0, 30))).verdict, Verdict::fail);
  EXPECT_TRUE(fails(on_bellcrank(0, 30, {0, -1, 0})).empty());
  EXPECT_EQ(sole(fails(on_bellcrank(-30, 0, {0, -1, 0}))).verdict, Verdict::fail);
}

TEST(ArmSweep, SaysTheSameOfTheOtherEnd) {
  EXPECT_TRUE(fails(reversed(on_bellcrank(-30, 0))).empty());
  EXPECT_NEAR(*sole(fails(reversed(on_bellcrank(-2, 2)))).value, 28, 1e-6);
}

TEST(ArmSweep, OfSeveralPartsOnOneAxisTheOneAtTheEndCounts) {
  SmallProject project = on_bellcrank(-30, 0);
  project.project.structure.movers.push_back(
      {"far", {100, 9, 0}, {0, 1, 0}, {{100, 9, 0}, {100, 9, 10}}, 0.2, -1, 1, {}});
  EXPECT_TRUE(fails(project).empty());
  project.project.structure.movers.front().points = {{100, 9, 0}, {100, 9, -10}};
  EXPECT_TRUE(fails(project).empty()) << "which of the two is not told";
}

// An arm of 3 in that 2 in of travel turn by asin(2/3), 41.8 degrees, to each side.
TEST(ArmSweep, OfARodMustReachAsFarAsItsTravelTurnsTheArm) {
  const auto turned = [](double sweep_deg) {
    SmallProject project = rod_project(2);
    project.project.routes[0].system = SystemKind::rod;
    Mover mover;
    mover.name = "elevator-horn";
    mover.pivot = {140, 0, 7};
    mover.axis = {0, 1, 0};
    mover.points = {{140, 0, 7}, {140, 0, 10}};
    mover.radius_in = 0.3;
    mover.sweep_from_deg = -sweep_deg;
    mover.sweep_to_deg = sweep_deg;
    project.project.structure.movers.push_back(mover);
    return not_passed(project.judged_by("bend-fit"));
  };
  EXPECT_TRUE(turned(42).empty());
  const Judgement judgement = sole(turned(20));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, 41.81 - 20, 0.05);
  EXPECT_TRUE(contains(judgement.message, "the rod's travel turns the arm at horn"))
      << judgement.message;
  expect_complete(judgement);
}

}  // namespace
}  // namespace linewright
