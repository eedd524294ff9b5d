// What a pushrod sweeps through its travel, against structure and other lines.

#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "model/angle.hpp"
#include "rules/cable_project.hpp"
#include "rules/rod_project.hpp"

namespace linewright {
namespace {

constexpr double rod_radius_in = half_inch_rod_radius_in;

SmallProject with_box(SmallProject project, Vec3 min, Vec3 max) {
  project.project.structure.solids.push_back({"wall", Box{min, max}, {"structure.yaml", 7, 5}});
  return project;
}

Judgement at_wall(const SmallProject& project, std::string_view rule) {
  std::vector<Judgement> all = project.judged_by(rule);
  std::erase_if(all, [](const Judgement& each) { return each.with != "wall"; });
  return sole(all);
}

/// Arms of 3 in turned 30 degrees: the rod comes 0.402 in down at both ends of 1.5 in of travel.
const double comes_down_in = 3 * (1 - std::cos(radians_of(30)));

/// A floor `below_in` under the drawn rod's surface, between its arms.
SmallProject over_floor(double below_in, double travel_in = 1.5) {
  const double top = 10 - rod_radius_in - below_in;
  return with_box(stiff_rod(rod_project(travel_in)), {106, -2, top - 1}, {134, 2, top});
}

// Every gap is taken less what may lie between the places looked at, 0.01 in at the most.
TEST(RodSweep, IsMeasuredFromTheLowestPlaceOfItsTravel) {
  const Judgement judgement = at_wall(over_floor(1.2), "clearance");
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_LE(*judgement.value, 1.2 - comes_down_in + 1e-9);
  EXPECT_GE(*judgement.value, 1.2 - comes_down_in - 0.01);
}

TEST(RodSweep, FailsWhereItComesIntoWhatIsClearOfItAsDrawn) {
  EXPECT_EQ(at_wall(over_floor(0.39), "clearance").verdict, Verdict::fail);
  EXPECT_EQ(at_wall(over_floor(0.39), "chafe").verdict, Verdict::fail);
  const Judgement still = at_wall(over_floor(0.6, 0), "clearance");
  EXPECT_EQ(still.verdict, Verdict::pass);
  expect_complete(at_wall(over_floor(0.39), "clearance"));
}

TEST(RodSweep, GoesBeyondItsDrawnEnds) {
  const SmallProject project = with_box(stiff_rod(rod_project(1.5)), {141, -2, 8}, {142, 2, 12});
  EXPECT_EQ(at_wall(project, "clearance").verdict, Verdict::fail);
}

TEST(RodSweep, FailsWhereItComesIntoAnotherLine) {
  SmallProject project = stiff_rod(rod_project(1.5));
  project.node("a", NodeKind::bulkhead, {120, -8, 9.3})
      .node("b", NodeKind::bulkhead, {120, 8, 9.3});
  project.route("vent", "tube-nylon-1/4", "a", "b");
  for (const char* rule : {"separation", "chafe"})
    EXPECT_EQ(sole(not_passed(project.judged_by(rule))).verdict, Verdict::fail) << rule;
}

/// Through a hole 1.5 in wide whose middle the drawn rod goes through: 0.5 in is left all round.
SmallProject through_frame(double travel_in) {
  SmallProject project = stiff_rod(rod_project(travel_in));
  add_frame(project, "F4", 120, 1.5);
  return project;
}

TEST(RodSweep, CountsTheEdgeOfTheHoleItGoesThrough) {
  EXPECT_TRUE(not_passed(through_frame(0).judged_by("clearance")).empty());
  const std::vector<Judgement> found = not_passed(through_frame(1.5).judged_by("clearance"));
  EXPECT_EQ(sole(found).with, "F4");
  EXPECT_LE(*sole(found).value, 0.5 - comes_down_in + 1e-9);
  EXPECT_EQ(sole(not_passed(through_frame(2).judged_by("chafe"))).verdict, Verdict::fail);
}

/// Through a hole so wide of a panel that stands across, whose own faces know of no hole.
SmallProject through_panel(double diameter_in) {
  SmallProject project = stiff_rod(rod_project(1.5));
  Panel panel;
  panel.name = "bulkhead";
  panel.corners = {{120, -10, 0}, {120, 10, 0}, {120, 10, 20}, {120, -10, 20}};
  panel.thickness_in = 0.04;
  panel.holes.push_back({"bulkhead-a", {120, 0, 10}, diameter_in, EdgeGuard::bare, {}, {}});
  project.project.structure.panels.push_back(panel);
  return project;
}

TEST(RodSweep, CountsTheEdgeOfAHoleInAPanelAndNotThePanelRoundIt) {
  for (const char* rule : {"clearance", "chafe"}) {
    EXPECT_TRUE(not_passed(through_panel(3).judged_by(rule)).empty()) << rule;
    EXPECT_EQ(sole(not_passed(through_panel(1).judged_by(rule))).verdict, Verdict::fail) << rule;
  }
}

TEST(RodSweep, IsUnknownWhereAnArmOrTheTravelIsNotStated) {
  SmallProject no_arm = over_floor(5);
  no_arm.project.nodes[0].arm.reset();
  SmallProject no_travel = over_floor(5);
  no_travel.project.routes[0].travel.reset();
  for (SmallProject project : {no_arm, no_travel}) {
    EXPECT_EQ(sole(project.judged_by("clearance")).verdict, Verdict::unknown);
    EXPECT_EQ(sole(project.judged_by("chafe")).verdict, Verdict::unknown);
    project.node("a", NodeKind::bulkhead, {120, -8, 10.6})
        .node("b", NodeKind::bulkhead, {120, 8, 10.6});
    project.route("vent", "tube-nylon-1/4", "a", "b");
    bool unknown = false;
    for (const Judgement& each : project.judged_by("separation")) {
      EXPECT_NE(each.verdict, Verdict::pass) << each.message;
      unknown |= each.verdict == Verdict::unknown;
    }
    EXPECT_TRUE(unknown);
  }
}

TEST(RodSweep, IsUnknownWhereAnArmCannotFollow) {
  SmallProject project = stiff_rod(rod_project(1.5, 3, 1));
  EXPECT_EQ(sole(project.judged_by("clearance")).verdict, Verdict::unknown);
}

TEST(RodSweep, FailsAsDrawnEvenWhereItsTravelIsNotKnown) {
  SmallProject project = over_floor(-0.1);
  project.project.routes[0].travel.reset();
  EXPECT_EQ(at_wall(project, "clearance").verdict, Verdict::fail);
}

// The arm that an end is fixed to goes with it.
TEST(RodSweep, DoesNotMeetItsOwnArm) {
  SmallProject project = stiff_rod(rod_project(1.5));
  project.project.structure.movers.push_back(
      {"crank", {100, 0, 7}, {0, 1, 0}, {{100, 0, 7}, {100, 0, 10}}, 0.3, -30, 30, {}});
  for (const char* rule : {"clearance", "chafe"})
    EXPECT_TRUE(not_passed(project.judged_by(rule)).empty()) << rule;
}

}  // namespace
}  // namespace linewright
