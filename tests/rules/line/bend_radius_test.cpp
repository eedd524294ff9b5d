// Bend radii against the least radius of each line. Radii are to the centreline.

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <numbers>
#include <string>

#include "rules/small_project.hpp"

namespace linewright {
namespace {

using std::numbers::pi;

/// 10 in aft, a square turn, 10 in to the right.
SmallProject square_turn(const std::string& line, double radius_in) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {100, 0, 10})
      .node("altimeter", NodeKind::instrument, {110, 10, 10});
  project.route("static-left", line, "port", "altimeter", {bent({110, 0, 10}, radius_in)});
  return project;
}

Judgement judged_turn(const std::string& line, double radius_in) {
  return sole(square_turn(line, radius_in).judged_by("bend-radius"));
}

/// A line, its least radius and what its table says when that is broken.
struct LeastRadius {
  const char* line;
  double radius_in;
  Verdict broken;
};

// AC 43.13-1B Table 9-2 (from memory); Table 9-3 for hose, to the inside of the bend by Fig. 9-10,
// so half of 0.52 and of 0.58 in is added (figures verified, where they are measured in a
// restatement); SAE J844 for nylon (from memory); polyethylene is five times its diameter by common
// practice; wire ten times, TM 1-1500-204-23-4 item 27 (verified).
constexpr LeastRadius least_radii[] = {
    {"tube-aluminium-1/8", 0.375, Verdict::fail},
    {"tube-aluminium-3/16", 7.0 / 16, Verdict::fail},
    {"tube-aluminium-1/4", 9.0 / 16, Verdict::fail},
    {"tube-aluminium-3/8", 15.0 / 16, Verdict::fail},
    {"tube-aluminium-1/2", 1.25, Verdict::fail},
    {"tube-steel-3/16", 21.0 / 32, Verdict::fail},
    {"tube-steel-1/4", 0.875, Verdict::fail},
    {"tube-steel-1/2", 1.75, Verdict::fail},
    {"tube-nylon-1/4", 1.0, Verdict::fail},
    {"tube-polyethylene-1/4", 1.25, Verdict::warn},
    {"hose-rubber-3/16", 3.26, Verdict::fail},
    {"hose-rubber-1/4", 3.67, Verdict::fail},
    {"wire-1/4", 2.5, Verdict::fail},
};

TEST(BendRadius, ExactlyAtTheLimitPasses) {
  for (const LeastRadius& each : least_radii)
    EXPECT_EQ(judged_turn(each.line, each.radius_in).verdict, Verdict::pass) << each.line;
}

TEST(BendRadius, AHundredthTighterBreaksWithTheVerdictOfItsSource) {
  for (const LeastRadius& each : least_radii)
    EXPECT_EQ(judged_turn(each.line, each.radius_in - 0.01).verdict, each.broken) << each.line;
}

// AC 43.13-1B Table 9-3 and Fig. 9-10, MIL-H-8794-4 hose, 0.52 in outside: 3 in to the inside.
TEST(BendRadius, HoseOfDashFourMayNotBeBentToThreeInchesOfItsCentreline) {
  const Judgement judgement = judged_turn("hose-rubber-3/16", 3.0);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 3.26);
  EXPECT_TRUE(contains(judgement.source, "to the inside of the bend")) << judgement.source;
  EXPECT_TRUE(contains(judgement.source, "verified in a restatement")) << judgement.source;
  EXPECT_EQ(judged_turn("hose-rubber-3/16", 3.26).verdict, Verdict::pass);
}

TEST(BendRadius, TightBendIsMeasuredAndPlaced) {
  const Judgement judgement = judged_turn("tube-aluminium-1/4", 0.5);
  EXPECT_EQ(judgement.rule, "bend-radius");
  EXPECT_EQ(judgement.route, "static-left");
  EXPECT_EQ(judgement.with, std::nullopt);
  EXPECT_DOUBLE_EQ(judgement.value.value(), 0.5);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 0.5625);
  EXPECT_DOUBLE_EQ(judgement.margin().value(), -0.0625);
  EXPECT_EQ(judgement.unit, Unit::inch);
  EXPECT_EQ(judgement.sense, LimitSense::at_least);
  // Middle of the arc: half of its length past the tangent point, R (1 - 1/√2) inside the corner.
  EXPECT_NEAR(judgement.distance_in.value(), 9.5 + 0.5 * pi / 4, 1e-12);
  const double inside = 0.5 * (1 - std::sqrt(0.5));
  EXPECT_NEAR(judgement.at.value().x, 110 - inside, 1e-12);
  EXPECT_NEAR(judgement.at.value().y, inside, 1e-12);
  EXPECT_NEAR(judgement.at.value().z, 10, 1e-12);
  EXPECT_EQ(judgement.location,
            (SourceLocation{"routes.yaml", SmallProject::line_of_point(0, 0), 9}));
}

TEST(BendRadius, TightBendIsSaidInWords) {
  const Judgement judgement = judged_turn("tube-nylon-1/4", 0.5);
  EXPECT_EQ(judgement.message, "90.0 deg bend at 0.500 in radius is too tight for tube-nylon-1/4");
  EXPECT_EQ(judgement.source, "SAE J844 (from memory, not checked against it)");
  // Tangents grow by (1.00 - 0.50) tan 45 deg.
  EXPECT_EQ(judgement.mend,
            "raise the bend radius to 1.00 in: needs 0.500 in more straight on each side");
}

TEST(BendRadius, MillimetresAreSaidWhereAskedFor) {
  const Judgement judgement =
      sole(square_turn("tube-nylon-1/4", 0.5).judged_by("bend-radius", {LengthUnit::millimetre}));
  EXPECT_TRUE(contains(judgement.message, "12.7 mm radius")) << judgement.message;
  EXPECT_TRUE(contains(judgement.mend, "to 25.4 mm: needs 12.7 mm more")) << judgement.mend;
  EXPECT_DOUBLE_EQ(judgement.value.value(), 0.5);
}

TEST(BendRadius, WideBendSaysSoWithoutAMend) {
  const Judgement judgement = judged_turn("tube-aluminium-1/4", 0.75);
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_EQ(judgement.message,
            "90.0 deg bend at 0.750 in radius is wide enough for tube-aluminium-1/4");
  EXPECT_DOUBLE_EQ(judgement.margin().value(), 0.1875);
  EXPECT_EQ(judgement.mend, "");
}

TEST(BendRadius, RaisingTheRadiusToWhatTheMendSaysMends) {
  for (const LeastRadius& each : least_radii) {
    const Judgement tight = judged_turn(each.line, 0.6 * each.radius_in);
    ASSERT_EQ(tight.verdict, each.broken) << each.line;
    double raised_in = 0;
    ASSERT_EQ(std::sscanf(tight.mend.c_str(), "raise the bend radius to %lf in", &raised_in), 1)
        << tight.mend;
    EXPECT_EQ(judged_turn(each.line, raised_in).verdict, Verdict::pass) << each.line;
    // Said to a hundredth or finer.
    EXPECT_NEAR(raised_in, each.radius_in, 0.01) << each.line;
  }
}

TEST(BendRadius, PointWithoutABendTakesTheUsualRadiusAndPasses) {
  SmallProject project = square_turn("tube-nylon-1/4", 1);
  project.project.routes[0].points[0].bend_in.reset();
  const Judgement judgement = sole(project.judged_by("bend-radius"));
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_DOUBLE_EQ(judgement.value.value(), 1.0);
}

TEST(BendRadius, LineWithoutALeastRadiusIsUnknown) {
  const Judgement judgement = judged_turn("tube-steel-1/8", 5);
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_EQ(judgement.message, "no minimum bend radius is known for tube-steel-1/8");
  EXPECT_DOUBLE_EQ(judgement.value.value(), 5);
  EXPECT_FALSE(judgement.limit);
  EXPECT_TRUE(contains(judgement.mend, "the project's lines")) << judgement.mend;
}

TEST(BendRadius, BendWithoutARadiusIsUnknown) {
  SmallProject project = square_turn("tube-steel-1/8", 1);
  project.project.routes[0].points[0].bend_in.reset();
  const Judgement judgement = sole(project.judged_by("bend-radius"));
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_EQ(judgement.message, "no radius is known for this 90.0 deg bend");
  EXPECT_FALSE(judgement.value);
  EXPECT_TRUE(contains(judgement.mend, "minimum_bend_radius")) << judgement.mend;
}

TEST(BendRadius, ProjectsOwnFigureFailsAndIsNamed) {
  SmallProject project = square_turn("tube-steel-1/8", 0.9);
  project.line("tube-steel-1/8").minimum_bend_radius_in =
      SourcedValue{1, {"maker's sheet", Mark::builder}};
  const Judgement judgement = sole(project.judged_by("bend-radius"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.source, "maker's sheet (the project's own figure)");
}

TEST(BendRadius, StraightLineIsNotJudged) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {20, 0, 0});
  project.route("static-left", "tube-nylon-1/4", "port", "altimeter", {bent({10, 0, 0}, 0.1)});
  EXPECT_TRUE(project.judged_by("bend-radius").empty());
}

TEST(BendRadius, CableIsNotJudged) {
  SmallProject project;
  project.node("pedal", NodeKind::pedal, {0, 0, 0}).node("horn", NodeKind::horn, {10, 10, 0});
  project.route("rudder", "cable-7x19-1/8-steel", "pedal", "horn",
                {held({10, 0, 0}, HoldKind::pulley)});
  EXPECT_TRUE(project.judged_by("bend-radius").empty());
}

TEST(BendRadius, EveryBendIsJudgedInOrder) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {20, 10, 10});
  project.route("static-left", "tube-nylon-1/4", "port", "altimeter",
                {bent({10, 0, 0}, 1), bent({10, 10, 0}, 0.99), bent({10, 10, 10}, 1.01)});
  const auto judgements = project.judged_by("bend-radius");
  EXPECT_EQ(verdicts(judgements), (std::vector{Verdict::pass, Verdict::fail, Verdict::pass}));
  EXPECT_EQ(judgements[1].location.line, SmallProject::line_of_point(0, 1));
}

// A line that turns back on itself would need an endless straight: the mend leaves that out.
TEST(BendRadius, FullReversalNamesTheRadiusAlone) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {2, 0, 0});
  project.route("static-left", "tube-nylon-1/4", "port", "altimeter", {bent({10, 0, 0}, 0.5)});
  const Judgement judgement = sole(project.judged_by("bend-radius"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.mend, "raise the bend radius to 1.00 in");
}

/// A hose with one square turn of 5 in, to a pump on the engine, clamped so far past the turn.
SmallProject hose_to_pump(std::optional<double> flexing_in, std::optional<double> clamp_past_in) {
  SmallProject project;
  project.node("firewall", NodeKind::bulkhead, {0, 0, 0})
      .node("pump", NodeKind::instrument, {20, 30, 0});
  project.project.nodes.back().on_engine = true;
  std::vector<RoutePoint> points{bent({20, 0, 0}, 5)};
  if (clamp_past_in) points.push_back(clamped({20, *clamp_past_in, 0}));
  project.route("pressure", "hose-rubber-1/4", "firewall", "pump", points);
  if (flexing_in)
    project.line("hose-rubber-1/4").flexing_bend_radius_in = {*flexing_in,
                                                              {"a maker", Mark::builder}};
  return project;
}

// A larger radius where a hose flexes: AC 43.13-1B Figure 9-10, US Navy 14018 p. 5-27 [verified].
TEST(BendRadius, OfAHoseThatFlexesTowardTheEngineHasALimitOfItsOwn) {
  const auto judged = [](std::optional<double> flexing, std::optional<double> clamp) {
    return sole(hose_to_pump(flexing, clamp).judged_by("bend-radius"));
  };
  const Judgement unknown = judged(std::nullopt, std::nullopt);
  EXPECT_EQ(unknown.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(unknown.source, "US Navy 14018 p. 5-27")) << unknown.source;
  EXPECT_EQ(judged(5, std::nullopt).verdict, Verdict::pass);
  const Judgement tight = judged(6, std::nullopt);
  EXPECT_EQ(tight.verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(tight.limit.value(), 6);
  EXPECT_EQ(judged(std::nullopt, 10).verdict, Verdict::pass);
}

}  // namespace
}  // namespace linewright
