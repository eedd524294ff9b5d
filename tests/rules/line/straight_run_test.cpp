// A rigid tube between two fittings must bend somewhere: MIL-H-8891A para 3.11.4.5 [verified].

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "rules/small_project.hpp"

namespace linewright {
namespace {

/// 20 in from one node to another, with points between them.
std::vector<Judgement> judged_run(const std::string& line, NodeKind from, NodeKind to,
                                  const std::vector<RoutePoint>& points = {}) {
  SmallProject project;
  project.node("forward", from, {0, 0, 0}).node("aft", to, {20, 0, 0});
  project.route("main", line, "forward", "aft", points);
  return project.judged_by("straight-run");
}

TEST(StraightRun, StraightMetalTubeBetweenFittingsFails) {
  const Judgement judgement =
      sole(judged_run("tube-aluminium-1/4", NodeKind::bulkhead, NodeKind::instrument));
  EXPECT_EQ(judgement.rule, "straight-run");
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.route, "main");
  EXPECT_DOUBLE_EQ(judgement.value.value(), 0);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 1);
  EXPECT_EQ(judgement.unit, Unit::none);
  EXPECT_EQ(judgement.sense, LimitSense::at_least);
  EXPECT_DOUBLE_EQ(judgement.distance_in.value(), 10);
  EXPECT_EQ(judgement.at.value(), (Vec3{10, 0, 0}));
  EXPECT_EQ(judgement.location, (SourceLocation{"routes.yaml", SmallProject::line_of_route(0), 5}));
  EXPECT_EQ(judgement.message,
            "rigid tube runs straight between forward and aft: it cannot take up heat, vibration "
            "or a misfit");
  EXPECT_TRUE(contains(judgement.source, "MIL-H-8891A para 3.11.4.5"));
  EXPECT_TRUE(contains(judgement.source, "(verified)"));
  EXPECT_EQ(judgement.mend, "draw at least one bend between the two fittings");
}

TEST(StraightRun, OneBendPasses) {
  const Judgement judgement = sole(judged_run("tube-aluminium-1/4", NodeKind::bulkhead,
                                              NodeKind::instrument, {bent({10, 3, 0}, 1)}));
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_DOUBLE_EQ(judgement.value.value(), 1);
  EXPECT_EQ(judgement.message, "the tube bends between forward and aft, so it can give");
  EXPECT_EQ(judgement.mend, "");
}

// Less than 5 degrees is a drawing's misfit [the rule's own figure, no source].
TEST(StraightRun, TurnOfLessThanFiveDegreesIsNoBend) {
  // Ten inches either way of a corner off to the side: each leg leans by half of the turn.
  const auto turning = [](double degrees) {
    const double aside = 10 * std::tan(degrees / 2 * std::numbers::pi / 180);
    return sole(judged_run("tube-aluminium-1/4", NodeKind::bulkhead, NodeKind::instrument,
                           {bent({10, aside, 0}, 1)}))
        .verdict;
  };
  EXPECT_EQ(turning(5.001), Verdict::pass);
  EXPECT_EQ(turning(4.99), Verdict::fail);
}

TEST(StraightRun, PointsOnTheStraightAreNoBends) {
  const Judgement judgement =
      sole(judged_run("tube-steel-1/4", NodeKind::tee, NodeKind::union_fitting,
                      {clamped({5, 0, 0}), bent({10, 0, 0}, 1), corner({15, 0, 0})}));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(judgement.value.value(), 0);
}

TEST(StraightRun, TubeWithAFreeEndIsNotJudged) {
  EXPECT_TRUE(judged_run("tube-aluminium-1/4", NodeKind::bulkhead, NodeKind::end).empty());
  EXPECT_TRUE(judged_run("tube-aluminium-1/4", NodeKind::end, NodeKind::bulkhead).empty());
}

TEST(StraightRun, LinesThatGiveAreNotJudged) {
  for (const char* line : {"tube-nylon-1/4", "tube-polyethylene-1/4", "hose-rubber-1/4",
                           "cable-7x19-1/8-steel", "wire-1/4"})
    EXPECT_TRUE(judged_run(line, NodeKind::bulkhead, NodeKind::instrument).empty()) << line;
}

}  // namespace
}  // namespace linewright
