// The bodies of pulleys against structure and each other. The pulley of most tests stands at
// FS 47.5, WL 12.5 and turns about BL: 5.4 in over its flanges, 0.4 in wide [calculated from its
// corner].

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "rules/cable_project.hpp"
#include "rules/project_text.hpp"

namespace linewright {
namespace {

RoutePoint sized(Vec3 at, double width_in) {
  RoutePoint point = pulley_at(at, 5, {0, 1, 0});
  point.outside_in = 5.4;
  point.width_in = width_in;
  return point;
}

SmallProject with_pulley() {
  SmallProject project = cable_project({sized({50, 0, 10}, 0.4)}, {50, 0, 50});
  set_tension(project, 40, 150);
  set_travel(project, 1, 1);
  return project;
}

SmallProject with_box(Vec3 min, Vec3 max) {
  SmallProject project = with_pulley();
  project.project.structure.solids.push_back({"block", Box{min, max}, {}});
  return project;
}

/// So far beside the flange, to the right or to the left.
SmallProject beside(double gap_in, double side) {
  const double near = side * (0.2 + gap_in);
  const double far = side * 3;
  return with_box({46, std::min(near, far), 11}, {47, std::max(near, far), 12});
}

/// What is said of pulleys that can be in something.
std::vector<Judgement> clashes(const SmallProject& project) {
  std::vector<Judgement> all = not_passed(project.judged_by("clearance"));
  std::erase_if(all, [](const Judgement& each) {
    return each.message.rfind("pulley 1 of", 0) != 0 && !contains(each.message, "whether pulley");
  });
  return all;
}

Frame web(double station, const std::vector<Vec2>& outline) {
  Frame frame;
  frame.name = "F1";
  frame.plane = at_station(station);
  frame.thickness_in = 0.04;
  frame.outline = outline;
  return frame;
}

TEST(PulleyInStructure, FailsInABoxWithinItsDisc) {
  for (const SmallProject& project :
       {with_box({45, -1, 12}, {46, 1, 13}), reversed(with_box({45, -1, 12}, {46, 1, 13})),
        with_box({46, 0.1, 11}, {46.5, 1, 12}), with_box({46, -1, 11}, {46.5, -0.1, 12}),
        with_box({46.9, -0.01, 11.9}, {47, 0.01, 12})}) {
    const Judgement judgement = sole(clashes(project));
    EXPECT_EQ(judgement.verdict, Verdict::fail);
    EXPECT_EQ(judgement.with, "block");
    EXPECT_LT(*judgement.value, 0);
    expect_complete(judgement);
  }
}

TEST(PulleyInStructure, CountsTheBuildTolerance) {
  for (const double side : {1.0, -1.0}) {
    SmallProject project = beside(0.061, side);
    project.project.build_tolerance_in = 0.06;
    EXPECT_TRUE(clashes(project).empty());
    project = beside(0.059, side);
    project.project.build_tolerance_in = 0.06;
    EXPECT_EQ(sole(clashes(project)).verdict, Verdict::fail);
    EXPECT_NEAR(*sole(clashes(project)).value, -0.001, 1e-6);
  }
}

TEST(PulleyInStructure, LeavesAloneWhatHoldsIt) {
  SmallProject project = with_box({45, -1, 12}, {46, 1, 13});
  the_route(project).points[0].to = "block";
  EXPECT_TRUE(clashes(project).empty());
}

TEST(PulleyInStructure, FailsInAWebWithoutAHole) {
  SmallProject project = with_pulley();
  project.project.structure.frames.push_back(web(46, {{-6, 12}, {6, 12}, {6, 40}, {-6, 40}}));
  EXPECT_EQ(sole(clashes(project)).with, "F1");
  EXPECT_EQ(sole(clashes(project)).verdict, Verdict::fail);
}

// At its spindle the pulley is 5.4 in by 0.4 in: 5.41 in from corner to corner, rims rounded.
TEST(PulleyInStructure, StandsInAHoleThatIsLargeEnough) {
  const auto in_hole = [](double diameter_in) {
    SmallProject project = with_pulley();
    Frame frame = web(47.5, {{-6, 0}, {6, 0}, {6, 40}, {-6, 40}});
    Hole hole;
    hole.name = "F1-a";
    hole.shape = Circle{{0, 12.5}, diameter_in};
    frame.holes.push_back(hole);
    project.project.structure.frames.push_back(frame);
    return clashes(project);
  };
  EXPECT_TRUE(in_hole(5.5).empty());
  EXPECT_EQ(sole(in_hole(5.3)).verdict, Verdict::fail);
}

TEST(PulleyInStructure, FailsInAPartThatSweepsThroughIt) {
  const auto swept = [](double to_deg) {
    SmallProject project = with_pulley();
    project.project.structure.movers.push_back(
        {"lever", {45, 3, 12}, {1, 0, 0}, {{45, 3, 12}, {45, 3, 15}}, 0.2, 0, to_deg, {}});
    return clashes(project);
  };
  EXPECT_TRUE(swept(30).empty());
  EXPECT_EQ(sole(swept(90)).verdict, Verdict::fail);
  EXPECT_EQ(sole(swept(90)).with, "lever");
}

// Two cables in diameter are wide and one beyond the groove high where nothing is stated; at the
// least it is as wide as its cable and as high as the cable's middle [common practice, no source].
TEST(PulleyInStructure, IsUnknownWhereASizeThatIsNotStatedWouldTell) {
  const auto unstated = [](double gap_in) {
    SmallProject project = with_box({46, gap_in, 11}, {47, 3, 12});
    the_route(project).points[0].width_in.reset();
    return clashes(project);
  };
  EXPECT_TRUE(unstated(0.126).empty());
  EXPECT_EQ(sole(unstated(0.124)).verdict, Verdict::unknown);
  EXPECT_TRUE(contains(sole(unstated(0.124)).message, "`width` is not stated"));
  expect_complete(sole(unstated(0.124)));
  EXPECT_EQ(sole(unstated(0.06)).verdict, Verdict::fail);
}

/// A second cable over a pulley of its own, beside the first.
SmallProject pair(double pitch_in, double forward_in = 0) {
  SmallProject project = with_pulley();
  project.node("pedal-2", NodeKind::pedal, {0, pitch_in, 10})
      .node("horn-2", NodeKind::horn, {50 - forward_in, pitch_in, 50});
  Route& route = project.route("rudder-right", eighth_steel, "pedal-2", "horn-2",
                               {sized({50 - forward_in, pitch_in, 10}, 0.4)});
  route.tension = Tension{40, 150, {}};
  route.travel = Travel{1, 1, {}};
  project.project.build_tolerance_in = 0.06;
  return project;
}

// On one spindle nothing but their widths counts.
TEST(PulleyInStructure, FailsInThePulleyBesideItOnOneSpindle) {
  for (const double side : {1.0, -1.0}) {
    EXPECT_TRUE(clashes(pair(0.4 * side)).empty());
    const Judgement judgement = sole(clashes(pair(0.39 * side)));
    EXPECT_EQ(judgement.verdict, Verdict::fail);
    EXPECT_NEAR(*judgement.value, -0.01, 1e-9);
    EXPECT_EQ(judgement.with, "pulley 1 of rudder-left");
    expect_complete(judgement);
  }
}

TEST(PulleyInStructure, OnOneSpindleWithoutStatedWidthsIsNotHeldAgainstTheUsualOnes) {
  SmallProject project = pair(0.2);
  for (Route& route : project.project.routes) route.points[0].width_in.reset();
  EXPECT_TRUE(clashes(project).empty());
}

TEST(PulleyInStructure, FailsInAPulleyOnAnotherSpindle) {
  EXPECT_TRUE(clashes(pair(0.47, 2)).empty());
  EXPECT_EQ(sole(clashes(pair(0.45, 2))).verdict, Verdict::fail);
  EXPECT_TRUE(clashes(pair(0.1, 5.6)).empty());
  EXPECT_EQ(sole(clashes(pair(0.1, 5.3))).verdict, Verdict::fail);
}

// Half a turn is drawn by two corners, a diameter apart.
TEST(PulleyInStructure, DrawnByTwoCornersIsOne) {
  SmallProject project =
      cable_project({sized({50, 0, 10}, 0.4), sized({50, 0, 15}, 0.4)}, {0, 0, 15});
  set_tension(project, 40, 150);
  set_travel(project, 1, 1);
  EXPECT_TRUE(clashes(project).empty());
}

}  // namespace
}  // namespace linewright
