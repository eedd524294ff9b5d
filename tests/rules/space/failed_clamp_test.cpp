// One clamp of a bundle that lets go must not let it reach a control.

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

#include "rules/small_project.hpp"

namespace linewright {
namespace {

/// A bundle of three spans of 12 in, and beside its middle a control cable `apart_in` off.
SmallProject beside_cable(double apart_in, HoldKind hold = HoldKind::clamp,
                          const std::string& line = "wire-1/4") {
  SmallProject project;
  project.node("a", NodeKind::bulkhead, {0, 0, 10}).node("b", NodeKind::bulkhead, {36, 0, 10});
  project.route("bundle", line, "a", "b", {held({12, 0, 10}, hold), held({24, 0, 10}, hold)});
  project.node("ca", NodeKind::bulkhead, {-10, apart_in, 10})
      .node("cb", NodeKind::bulkhead, {46, apart_in, 10});
  Route& cable = project.route("cable", "cable-7x19-1/8-steel", "ca", "cb");
  cable.tension = Tension{100, 150, {}};
  cable.travel = Travel{0, 0, {}};
  return project;
}

std::vector<Judgement> failed(const SmallProject& project) {
  std::vector<Judgement> all = not_passed(project.judged_by("chafe"));
  std::erase_if(all, [](const Judgement& each) { return !contains(each.message, "lets go"); });
  return all;
}

/// Distance at which a span of this length reaches just that far, by the slack of the catalogue:
/// √(3 L δ / 8) for a slack string.
double bow_of(double length_in) {
  const SmallProject project;
  const double slack = project.project.catalogue.find_line("wire-1/4")->slack_fraction->value;
  return std::sqrt(3 * length_in * slack * length_in / 8);
}

double radii() {
  SmallProject project;
  return (project.line("wire-1/4").largest_diameter_in() +
          project.line("cable-7x19-1/8-steel").largest_diameter_in()) /
         2;
}

TEST(FailedClamp, FailsWhereTheBundleThenReachesAControl) {
  // Within the bow of 24 in, a good part of which the cable's own sag is, and beyond that of 12.
  const double apart = radii() + bow_of(24) * 0.9;
  const Judgement judgement = sole(failed(beside_cable(apart)));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.with, "cable");
  EXPECT_TRUE(contains(judgement.message, "if the clamp lets go, the bundle can reach cable"))
      << judgement.message;
  EXPECT_TRUE(contains(judgement.source, "11-125"));
}

// Nearer than that an intact span might reach it already, for a warning: the failure is still one.
TEST(FailedClamp, FailsWhereTheIntactSpanMightReachIt) {
  bool warned = false;
  for (const double share : {0.9, 0.8, 0.7, 0.6}) {
    const SmallProject project = beside_cable(radii() + bow_of(24) * share);
    bool failing = false;
    for (const Judgement& each : not_passed(project.judged_by("chafe"))) {
      failing |= each.verdict == Verdict::fail;
      warned |= each.verdict == Verdict::warn;
    }
    EXPECT_TRUE(failing) << share;
  }
  EXPECT_TRUE(warned);
}

TEST(FailedClamp, IsSilentWhereNoneLetsItReach) {
  EXPECT_TRUE(failed(beside_cable(radii() + 3 * bow_of(24))).empty());
}

TEST(FailedClamp, IsSilentOfGrommets) {
  EXPECT_TRUE(failed(beside_cable(radii() + bow_of(24) * 0.9, HoldKind::grommet)).empty());
}

TEST(FailedClamp, FailsAtMovingParts) {
  SmallProject project = beside_cable(100);
  Mover mover;
  mover.name = "bell";
  mover.pivot = {12, 8, 10};
  mover.axis = {0, 0, 1};
  mover.radius_in = 0.2;
  mover.points = {
      {12, bow_of(24) * 0.8 + 0.2 + project.line("wire-1/4").largest_diameter_in() / 2, 10}};
  mover.sweep_from_deg = -1;
  mover.sweep_to_deg = 1;
  project.project.structure.movers.push_back(mover);
  const Judgement judgement = sole(failed(project));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.with, "bell");
}

// No contact with a vent line, a clamp missing: AC 43.13-1B para 11-96 w [verified].
TEST(FailedClamp, FailsWhereTheBundleThenReachesAVentLine) {
  const auto beside_tube = [](SystemKind system) {
    SmallProject project = beside_cable(radii() + bow_of(24) * 0.9);
    Route& other = project.project.routes.back();
    other.line = "tube-steel-1/8";
    other.system = system;
    other.tension.reset();
    other.travel.reset();
    return failed(project);
  };
  const Judgement reached = sole(beside_tube(SystemKind::vent));
  EXPECT_EQ(reached.verdict, Verdict::fail);
  EXPECT_TRUE(contains(reached.source, "11-96 w")) << reached.source;
  EXPECT_TRUE(beside_tube(SystemKind::static_air).empty());
}

TEST(FailedClamp, OnlyWarnsOfTubes) {
  // Nylon springs back, but its slack over 24 in bows it by more than three quarters of an inch.
  const Judgement judgement =
      sole(failed(beside_cable(radii() + 0.8, HoldKind::clamp, "tube-nylon-1/4")));
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_TRUE(contains(judgement.message, "if the clamp lets go, the line can reach cable"))
      << judgement.message;
  EXPECT_TRUE(contains(judgement.source, "common practice"));
}

}  // namespace
}  // namespace linewright
