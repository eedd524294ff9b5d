// Lines tied to each other along a stretch.

#include <gtest/gtest.h>

#include <string>

#include "rules/cable_project.hpp"

namespace linewright {
namespace {

constexpr double largest_radius_in = 0.125;  // of wire-1/4 and tube-nylon-1/4

/// Two lines along FS from 100 to 140 whose surfaces are `gap_in` from each other, tied from 5 to
/// 35 in.
SmallProject tied(const std::string& first, const std::string& second, double gap_in) {
  SmallProject project;
  const double aside = 2 * largest_radius_in + gap_in;
  project.node("a", NodeKind::bulkhead, {100, 0, 10}).node("b", NodeKind::bulkhead, {140, 0, 10});
  project.node("c", NodeKind::bulkhead, {100, aside, 10})
      .node("d", NodeKind::bulkhead, {140, aside, 10});
  project.route("first", first, "a", "b");
  project.route("second", second, "c", "d");
  project.project.bundles.push_back({"tunnel", {"first", "second"}, 5, 35, 4, {"p.yaml", 9, 5}});
  return project;
}

const std::string wire = "wire-1/4";
const std::string tube = "tube-nylon-1/4";

TEST(Bundle, PassesForTwoTubesThatLieTogether) {
  EXPECT_TRUE(not_passed(tied(tube, tube, 0.02).judged_by("bundle")).empty());
}

// Tubes 0.02 in apart are too near, but where they are tied; past the last tie they part in 2 in.
TEST(Bundle, TakesItsLinesOutOfSeparationAndChafeWhereTheyAreTied) {
  SmallProject project = tied(tube, tube, 0.02);
  project.project.bundles.front().from_in = 1;
  project.project.bundles.front().to_in = 39;
  for (const char* rule : {"separation", "chafe"})
    EXPECT_TRUE(not_passed(project.judged_by(rule)).empty()) << rule;
  project.project.bundles.front().to_in = 30;
  for (const char* rule : {"separation", "chafe"}) {
    const Judgement found = sole(not_passed(project.judged_by(rule)));
    EXPECT_GT(*found.distance_in, 31.5) << rule;
  }
  project.project.bundles.clear();
  EXPECT_FALSE(not_passed(project.judged_by("separation")).empty());
}

TEST(Bundle, CountsAgainstOtherLinesAsBefore) {
  SmallProject project = tied(tube, tube, 0.02);
  project.node("left", NodeKind::bulkhead, {120, -10, 10.3})
      .node("right", NodeKind::bulkhead, {120, 10, 10.3});
  project.route("third", tube, "left", "right");
  int near_third = 0;
  for (const Judgement& each : not_passed(project.judged_by("separation")))
    near_third += each.with == "third";
  EXPECT_EQ(near_third, 2);
}

TEST(Bundle, FailsWhereAMovingCableIsTied) {
  SmallProject project = tied(wire, eighth_steel, 0.1);
  project.project.routes[1].travel = Travel{2, 2, {}};
  const std::vector<Judgement> found = not_passed(project.judged_by("bundle"));
  EXPECT_EQ(sole(found).verdict, Verdict::fail);
  expect_complete(sole(found));
  // And the two are judged as if nothing tied them.
  EXPECT_FALSE(not_passed(project.judged_by("separation")).empty());
  project.project.routes[1].travel.reset();
  EXPECT_EQ(sole(not_passed(project.judged_by("bundle"))).verdict, Verdict::fail);
  project.project.routes[1].travel = Travel{0, 0, {}};
  EXPECT_TRUE(not_passed(project.judged_by("bundle")).empty());
}

TEST(Bundle, FailsForWiresOnALineWithVapourAndWarnsOnOthers) {
  SmallProject project = tied(wire, tube, 0.1);
  EXPECT_EQ(sole(not_passed(project.judged_by("bundle"))).verdict, Verdict::warn);
  project.project.routes[1].system = SystemKind::vent;
  EXPECT_EQ(sole(not_passed(project.judged_by("bundle"))).verdict, Verdict::fail);
}

// A line said to be tied that lies out of the reach of any tie is none.
TEST(Bundle, WarnsOfLinesThatDoNotLieTogetherAndJudgesThemAsNotTied) {
  SmallProject project = tied(tube, tube, 0.6);
  for (const Judgement& each : not_passed(project.judged_by("bundle"))) {
    EXPECT_EQ(each.verdict, Verdict::warn);
    EXPECT_NEAR(*each.value, 0.6, 1e-3);
  }
  project.project.build_tolerance_in = 0.2;
  EXPECT_FALSE(not_passed(project.judged_by("separation")).empty());
}

TEST(Bundle, FailsWhereOneLineLiesInAnother) {
  EXPECT_EQ(sole(not_passed(tied(tube, tube, -0.1).judged_by("bundle"))).verdict, Verdict::fail);
}

// Separation and chafe leave tied lines out as they part: none of the three may look away there.
TEST(Bundle, FailsWhereLinesRunThroughEachOtherAsTheyPart) {
  for (const double side : {1.0, -1.0}) {
    SmallProject project;
    project.node("a", NodeKind::bulkhead, {100, 0, 10})
        .node("b", NodeKind::bulkhead, {140, 0, 10})
        .node("c", NodeKind::bulkhead, {100, side * 0.3, 10})
        .node("d", NodeKind::bulkhead, {126, side * -6, 10});
    project.route("first", tube, "a", "b");
    project.route("second", tube, "c", "d", {bent({126, side * 0.3, 10}, 0.5)});
    project.project.bundles.push_back({"tunnel", {"first", "second"}, 5, 24.5, 4, {}});
    const Judgement found = sole(not_passed(project.judged_by("bundle")));
    EXPECT_EQ(found.verdict, Verdict::fail);
    EXPECT_NEAR(*found.value, -0.25, 1e-3);  // one middle in the other
    EXPECT_NEAR(*found.distance_in, 26, 0.1);
    project.project.routes.back().points.front().at.y = side * 9;
    project.project.nodes.back().at.y = side * 20;
    EXPECT_NE(not_passed(project.judged_by("bundle")).front().verdict, Verdict::pass);
  }
}

// Two lines of one connector meet in it: that is not one line in another.
TEST(Bundle, LetsLinesMeetInTheFittingThatTheyShare) {
  SmallProject project;
  project.node("plug", NodeKind::bulkhead, {100, 0, 10})
      .node("b", NodeKind::bulkhead, {140, 0, 10})
      .node("d", NodeKind::bulkhead, {140, 0.3, 10});
  project.route("first", wire, "plug", "b", {bent({102, 0, 10}, 0.1)});
  project.route("second", wire, "plug", "d", {bent({101, 0.3, 10}, 0.1)});
  project.project.bundles.push_back({"tunnel", {"first", "second"}, 2, 38, 4, {}});
  EXPECT_TRUE(not_passed(project.judged_by("bundle")).empty());
}

TEST(Bundle, IsUnknownWhereItEndsBeyondItsFirstLine) {
  SmallProject project = tied(tube, tube, 0.02);
  project.project.bundles.front().to_in = 41;
  EXPECT_EQ(sole(not_passed(project.judged_by("bundle"))).verdict, Verdict::unknown);
}

// Two circles of 1/4 in side by side lie in one of 1/2 in: eight sixteenths.
TEST(Bundle, NamesOneClampForItsGirth) {
  const std::vector<Judgement> all = tied(tube, tube, 0).judged_by("bundle");
  EXPECT_TRUE(contains(all.front().message, "clamp-")) << all.front().message;
}

// The second line is measured from its own end, and may run the other way.
TEST(Bundle, IsTheSameWhicheverWayItsLinesRun) {
  SmallProject project = tied(tube, tube, 0.02);
  std::swap(project.project.routes[1].from, project.project.routes[1].to);
  EXPECT_TRUE(not_passed(project.judged_by("bundle")).empty());
  const std::vector<Judgement> found = not_passed(project.judged_by("separation"));
  EXPECT_EQ(sole(found).with, "second");
  EXPECT_TRUE(*sole(found).distance_in < 3.5 || *sole(found).distance_in > 36.5);
}

}  // namespace
}  // namespace linewright
