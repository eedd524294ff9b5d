// Pulleys stand in the way of every line but the cable in their groove.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "rules/cable_project.hpp"
#include "rules/project_text.hpp"

namespace linewright {
namespace {

/// Up over a pulley of 5 in at FS 50: its spindle is at FS 47.5, WL 12.5.
SmallProject over_pulley() {
  SmallProject project = cable_project({pulley_at({50, 0, 10}, 5, {0, 1, 0})}, {50, 0, 50});
  set_tension(project, 40, 150);
  set_travel(project, 1, 1);
  return project;
}

std::vector<Judgement> at_pulley(const SmallProject& project,
                                 const std::string& name = "pulley 1 of rudder-left") {
  std::vector<Judgement> all = not_passed(project.judged_by("clearance"));
  std::erase_if(all, [&](const Judgement& each) {
    return each.with != name || each.verdict == Verdict::unknown;
  });
  return all;
}

SmallProject with_line(SmallProject project, Vec3 from, Vec3 to,
                       const std::string& line = "tube-nylon-1/4") {
  project.node("a", NodeKind::bulkhead, from).node("b", NodeKind::bulkhead, to);
  project.route("other", line, "a", "b");
  return project;
}

TEST(PulleyBody, FailsInEveryOtherLine) {
  for (const std::string line :
       {"tube-nylon-1/4", "tube-aluminium-1/4", "wire-1/4", "cable-7x19-1/8-steel"}) {
    SCOPED_TRACE(line);
    const SmallProject through = with_line(over_pulley(), {47.5, -6, 12.5}, {47.5, 6, 12.5}, line);
    const Judgement judgement = sole(at_pulley(through));
    EXPECT_EQ(judgement.verdict, Verdict::fail);
    EXPECT_EQ(judgement.route, "other");
  }
}

TEST(PulleyBody, IsThereGivenByItsCentreAndWithoutAnAxis) {
  SmallProject by_centre = over_pulley();
  RoutePoint& point = the_route(by_centre).points[0];
  point.given = PointGiven::centre;
  point.at = {47.5, 0, 12.5};
  point.axis = Vec3{0, -1, 0};
  SmallProject plain = over_pulley();
  the_route(plain).points[0].axis.reset();
  for (const SmallProject& project : {by_centre, plain, reversed(over_pulley())})
    EXPECT_EQ(sole(at_pulley(with_line(project, {47.5, -6, 12.5}, {47.5, 6, 12.5}))).verdict,
              Verdict::fail);
}

// Flanges reach 2.5 + 0.125 in from the spindle; what moves wants half an inch.
TEST(PulleyBody, ReachesACablesDiameterBeyondTheGroove) {
  const double half = SmallProject().line("tube-nylon-1/4").largest_diameter_in() / 2;
  const auto below = [&](double gap) {
    const double wl = 12.5 - 2.625 - half - gap;
    return with_line(over_pulley(), {47.5, -6, wl}, {47.5, 6, wl});
  };
  EXPECT_EQ(sole(at_pulley(below(0.3))).verdict, Verdict::warn);
  EXPECT_TRUE(at_pulley(below(0.8)).empty());
}

TEST(PulleyBody, IsAsWideAndAsLargeAsStated) {
  SmallProject project = over_pulley();
  the_route(project).points[0].outside_in = 7;
  the_route(project).points[0].width_in = 2;
  // 3.2 in from the spindle, and beside the groove.
  const SmallProject near = with_line(project, {44.3, 0.9, 12.5}, {44.3, 8, 12.5});
  EXPECT_EQ(sole(at_pulley(near)).verdict, Verdict::fail);
}

TEST(PulleyBody, LeavesItsOwnCableAlone) {
  EXPECT_TRUE(at_pulley(over_pulley()).empty());
  EXPECT_TRUE(at_pulley(reversed(over_pulley())).empty());
}

/// A second cable over a pulley of its own on the same spindle.
SmallProject side_by_side(double pitch_in) {
  SmallProject project = over_pulley();
  project.node("pedal-2", NodeKind::pedal, {0, pitch_in, 10})
      .node("horn-2", NodeKind::horn, {50, pitch_in, 50});
  Route& route = project.route("rudder-right", eighth_steel, "pedal-2", "horn-2",
                               {pulley_at({50, pitch_in, 10}, 5, {0, 1, 0})});
  route.tension = Tension{40, 150, {}};
  route.travel = Travel{1, 1, {}};
  project.project.build_tolerance_in = 0.06;
  return project;
}

TEST(PulleyBody, IsWhatItsOwnCableFallsBackOntoWhenSlack) {
  // In a pair on one spindle, each slack while the other is pulled.
  SmallProject project = side_by_side(0.5);
  for (Route& route : project.project.routes) route.control = "rudder";
  project.project.temperature = {30, 70, 110};
  for (const Judgement& judgement : project.judged_by("chafe"))
    EXPECT_FALSE(contains(judgement.with.value_or(""), "pulley")) << judgement.message;
}

TEST(PulleyBody, FailsInItsOwnCableWhereThatComesByAgain) {
  // Counted from the nose: the one at FS 44 is the first.
  SmallProject project =
      cable_project({pulley_at({50, 0, 10}, 5, {0, 1, 0}), pulley_at({50, 0, 40}, 3, {0, 1, 0}),
                     pulley_at({44, 0, 40}, 3, {0, 1, 0})},
                    {46.5, 0, 0});
  set_tension(project, 40, 150);
  EXPECT_EQ(sole(at_pulley(project, "pulley 2 of rudder-left")).verdict, Verdict::fail);
}

TEST(PulleyBody, LeavesCablesInOtherGroovesOfOneSpindleAlone) {
  for (const double pitch : {0.5, -0.5, 0.3}) {
    SCOPED_TRACE(pitch);
    EXPECT_TRUE(at_pulley(side_by_side(pitch)).empty());
    EXPECT_TRUE(at_pulley(side_by_side(pitch), "pulley 1 of rudder-right").empty());
  }
}

TEST(PulleyBody, FailsInACableWhoseGrooveWouldLieInIt) {
  EXPECT_FALSE(at_pulley(side_by_side(0.1)).empty());
}

// Nobody knows on which side of the cable it is.
TEST(PulleyBody, IsUnknownWhereTheCableDoesNotTurnOnIt) {
  SmallProject project = over_pulley();
  project.project.nodes[1].at = {100, 0, 10};
  const Judgement judgement = sole(not_passed(project.judged_by("clearance")));
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(judgement.message, "does not turn on the pulley")) << judgement.message;
  EXPECT_EQ(judgement.location.line, SmallProject::line_of_point(0, 0));
  expect_complete(judgement);
  // Given by its centre it has its place, whatever the cable does.
  RoutePoint& point = the_route(project).points[0];
  point.given = PointGiven::centre;
  point.at = {50, 0, 12.5};
  EXPECT_TRUE(not_passed(project.judged_by("clearance")).empty());
}

}  // namespace
}  // namespace linewright
