// Free lengths between supports. The lines of these projects run straight, so that a free length is
// a difference of two stations.

#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "lines/motion/free_spans.hpp"

namespace linewright {
namespace {

Judgement judged_span(const std::string& line, double length_in) {
  return sole(one_span(line, length_in).judged_by("support-spacing"));
}

/// One line held at its start, with a tail that ends in the air.
Judgement judged_tail(const std::string& line, double length_in) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("loose", NodeKind::end, {length_in, 0, 0});
  project.route("main", line, "port", "loose");
  return sole(project.judged_by("support-spacing"));
}

struct Spacing {
  const char* line;
  double spacing_in;
};

// Maximum distance between supports: FAA-H-8083-30 chapter 7, Table 7-5, for aluminium and the two
// small steel sizes (from memory), MIL-H-8891A Table II for the others.
constexpr Spacing metal_tubes[] = {
    {"tube-aluminium-1/8", 9.5}, {"tube-aluminium-3/16", 12},  {"tube-aluminium-1/4", 13.5},
    {"tube-aluminium-5/16", 15}, {"tube-aluminium-3/8", 16.5}, {"tube-aluminium-1/2", 19},
    {"tube-aluminium-5/8", 22},  {"tube-aluminium-3/4", 24},   {"tube-aluminium-1", 26.5},
    {"tube-steel-1/8", 11.5},    {"tube-steel-3/16", 14},      {"tube-steel-1/4", 16},
    {"tube-steel-5/16", 18},     {"tube-steel-3/8", 20},       {"tube-steel-1/2", 23},
    {"tube-steel-5/8", 25.5},    {"tube-steel-3/4", 27.5},     {"tube-steel-1", 30},
};

TEST(SupportSpacing, EveryMetalTubePassesAtItsSpacingAndFailsATenthOver) {
  for (const Spacing& each : metal_tubes) {
    EXPECT_EQ(judged_span(each.line, each.spacing_in).verdict, Verdict::pass) << each.line;
    EXPECT_EQ(judged_span(each.line, each.spacing_in + 0.01).verdict, Verdict::fail) << each.line;
    EXPECT_EQ(judged_span(each.line, each.spacing_in + 0.1).verdict, Verdict::fail) << each.line;
  }
}

// AC 43.13-1B para 9-30 d(3) [verified].
TEST(SupportSpacing, HosePassesAtTwentyFourInchesAndFailsAtTwentyFive) {
  EXPECT_EQ(judged_span("hose-rubber-3/16", 24).verdict, Verdict::pass);
  EXPECT_EQ(judged_span("hose-rubber-3/16", 25).verdict, Verdict::fail);
}

// AC 43.13-1B para 11-96 a [verified].
TEST(SupportSpacing, WirePassesAtTwentyFourInches) {
  EXPECT_EQ(judged_span("wire-1/4", 24).verdict, Verdict::pass);
  EXPECT_EQ(judged_span("wire-1/4", 24.01).verdict, Verdict::fail);
}

// MIL-H-8891A Table II, and 20 % less with a tee on the span: the paragraph above it [verified].
TEST(SupportSpacing, QuarterInchSteelTubePassesAtSixteenAndWithATeeAtTwelvePointEight) {
  EXPECT_EQ(judged_span("tube-steel-1/4", 16.0).verdict, Verdict::pass);
  EXPECT_EQ(judged_span("tube-steel-1/4", 16.1).verdict, Verdict::fail);
  EXPECT_EQ(sole(joined_by_tee(8, 4.8).judged_by("support-spacing")).verdict, Verdict::pass);
  EXPECT_EQ(sole(joined_by_tee(8, 4.81).judged_by("support-spacing")).verdict, Verdict::fail);
}

TEST(SupportSpacing, VerdictFollowsTheMarkOfTheSpacing) {
  const Judgement verified = judged_span("tube-steel-1/4", 17);
  EXPECT_EQ(verified.verdict, Verdict::fail);
  EXPECT_TRUE(contains(verified.source, "MIL-H-8891A Table II")) << verified.source;
  EXPECT_TRUE(contains(verified.source, "(verified)")) << verified.source;
  const Judgement recalled = judged_span("tube-aluminium-1/4", 17);
  EXPECT_EQ(recalled.verdict, Verdict::fail);
  EXPECT_EQ(recalled.source,
            "FAA-H-8083-30 chapter 7, Table 7-5 (from memory, not checked against it)");
  const Judgement practice = judged_span("tube-nylon-1/4", 13.51);
  EXPECT_EQ(practice.verdict, Verdict::warn);
  EXPECT_TRUE(contains(practice.source, "(common practice, no source)")) << practice.source;
  EXPECT_EQ(judged_span("tube-nylon-1/4", 13.5).verdict, Verdict::pass);
}

TEST(SupportSpacing, LongSpanIsMeasuredPlacedAndSaid) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {30, 0, 0});
  project.route("main", "tube-aluminium-1/4", "port", "altimeter",
                {clamped_to({4, 0, 0}, "S3L"), corner({13, 0, 0}), clamped({24, 0, 0})});
  const Judgement judgement = sole(not_passed(project.judged_by("support-spacing")));
  EXPECT_EQ(judgement.rule, "support-spacing");
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.route, "main");
  EXPECT_EQ(judgement.with, std::nullopt);
  EXPECT_DOUBLE_EQ(judgement.value.value(), 20);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 13.5);
  EXPECT_EQ(judgement.sense, LimitSense::at_most);
  EXPECT_EQ(judgement.unit, Unit::inch);
  EXPECT_DOUBLE_EQ(judgement.distance_in.value(), 14);
  EXPECT_EQ(judgement.at.value(), (Vec3{14, 0, 0}));
  EXPECT_EQ(judgement.location.line, SmallProject::line_of_point(0, 1));
  EXPECT_EQ(judgement.message,
            "20.0 in free length between clamp on S3L and clamp: 6.50 in too long");
  // No more than 13.5 in from either: 24 - 13.5 to 4 + 13.5.
  EXPECT_EQ(judgement.mend, "add a support between 10.5 and 17.5 in from port");
}

TEST(SupportSpacing, EachSpanIsJudgedInOrder) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {30, 0, 0});
  project.route("main", "tube-aluminium-1/4", "port", "altimeter",
                {clamped({13.5, 0, 0}), clamped({27.01, 0, 0})});
  EXPECT_EQ(verdicts(project.judged_by("support-spacing")),
            (std::vector{Verdict::pass, Verdict::fail, Verdict::pass}));
}

TEST(SupportSpacing, LengthIsMeasuredAlongTheLine) {
  // A square turn of 1 in radius: 10 + 10 in of legs, less 2 in, more a quarter circle: 19.57 in.
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {10, 10, 0});
  project.route("main", "tube-steel-1/4", "port", "altimeter", {bent({10, 0, 0}, 1)});
  EXPECT_NEAR(sole(project.judged_by("support-spacing")).value.value(), 18 + 1.5707963, 1e-6);
}

TEST(SupportSpacing, UnknownSpacingIsUnknown) {
  SmallProject project = one_span("tube-nylon-1/4", 1);
  project.line("tube-nylon-1/4").support_spacing_in.reset();
  const Judgement judgement = sole(project.judged_by("support-spacing"));
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_EQ(judgement.message,
            "no support spacing is known for tube-nylon-1/4 between port and altimeter");
  EXPECT_FALSE(judgement.limit);
  EXPECT_TRUE(contains(judgement.mend, "support_spacing and its source")) << judgement.mend;
}

TEST(SupportSpacing, OneUnknownLineLeavesAJoinedRunUnknown) {
  SmallProject project =
      joined_lines(NodeKind::tee, std::nullopt, "tube-nylon-1/4", 1, "tube-aluminium-1/4", 1);
  project.line("tube-nylon-1/4").support_spacing_in.reset();
  EXPECT_EQ(sole(project.judged_by("support-spacing")).verdict, Verdict::unknown);
}

TEST(SupportSpacing, CablesAreNotJudged) {
  SmallProject project;
  project.node("pedal", NodeKind::pedal, {0, 0, 0}).node("horn", NodeKind::horn, {200, 0, 0});
  project.route("rudder", "cable-7x19-1/8-steel", "pedal", "horn");
  EXPECT_TRUE(project.judged_by("support-spacing").empty());
}

// A guide holds a line up to a bore of twice its diameter [common practice, no source].
TEST(SupportSpacing, GrommetThatTheLineNearlyFillsIsASupport) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {20, 0, 0});
  Hole hole{"F1-a", Circle{{0, 0}, 0.75}, EdgeGuard::grommet, 0.5, {}};
  Frame frame{"F1", at_station(10), 0.032, {{-5, -5}, {5, -5}, {5, 5}, {-5, 5}}, {hole}, {}};
  project.project.structure.frames = {frame};
  RoutePoint point = corner({10, 0, 0});
  point.through = "F1-a";
  project.route("main", "tube-nylon-1/4", "port", "altimeter", {point});
  EXPECT_EQ(verdicts(project.judged_by("support-spacing")),
            (std::vector{Verdict::pass, Verdict::pass}));
  project.project.structure.frames[0].holes[0].bore_in = 0.51;
  EXPECT_EQ(verdicts(project.judged_by("support-spacing")), (std::vector{Verdict::warn}));
}

// Square root of 3.516/22.373, clamped-free against clamped-clamped [verified: Thomson, Theory of
// Vibration, App. D], is 0.396: 0.4 [common practice, no source].
TEST(SupportSpacing, FreeEndMayBeTwoFifthsOfTheSpacing) {
  EXPECT_EQ(judged_tail("tube-steel-1/4", 6.4).verdict, Verdict::pass);
  const Judgement judgement = judged_tail("tube-steel-1/4", 6.41);
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 6.4);
  EXPECT_EQ(judgement.message,
            "6.41 in free length between port and a free end: 0.010 in too long");
  EXPECT_TRUE(contains(judgement.source, "; free end: equal first frequency")) << judgement.source;
  // The tail past the support may be 6.4 in, and the rest a whole span.
  EXPECT_EQ(judgement.mend, "add a support between 0.010 and 6.41 in from port");
}

TEST(SupportSpacing, LineThatNothingHoldsIsNeverPassed) {
  SmallProject project;
  project.node("forward", NodeKind::end, {0, 0, 0}).node("aft", NodeKind::end, {1, 0, 0});
  project.route("main", "tube-steel-1/4", "forward", "aft");
  const Judgement judgement = sole(project.judged_by("support-spacing"));
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_EQ(judgement.message,
            "1.00 in free length between a free end and a free end: nothing holds it");
  EXPECT_EQ(judgement.mend, "add a support between 0.000 and 1.00 in from forward");
}

TEST(SupportSpacing, FreeLengthGoesOnThroughATeeThatHangs) {
  const Judgement judgement = sole(joined_by_tee(6, 10).judged_by("support-spacing"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(judgement.value.value(), 16);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 12.8);
  // It stands on the longer of the two lines, in its middle.
  EXPECT_EQ(judgement.route, "main");
  EXPECT_EQ(judgement.with, "left");
  EXPECT_DOUBLE_EQ(judgement.distance_in.value(), 5);
  EXPECT_EQ(judgement.message,
            "16.0 in free length with a fitting on it between port and altimeter: 3.20 in too "
            "long");
  EXPECT_TRUE(contains(judgement.source, "; less 20 %: MIL-H-8891A")) << judgement.source;
  // 16 - 12.8 to 12.8 from either end; 6 in of the way is on the other line.
  EXPECT_EQ(judgement.mend, "add a support between 0.000 and 6.80 in from joint");
}

TEST(SupportSpacing, FixedTeeEndsTheSpans) {
  const auto fixed = joined_lines(NodeKind::tee, true, "tube-steel-1/4", 16, "tube-steel-1/4", 16);
  const std::vector<Judgement> judgements = fixed.judged_by("support-spacing");
  ASSERT_EQ(judgements.size(), 2u);
  for (const Judgement& each : judgements) {
    EXPECT_EQ(each.verdict, Verdict::pass);
    EXPECT_DOUBLE_EQ(each.value.value(), 16);
    EXPECT_DOUBLE_EQ(each.limit.value(), 16);
  }
}

TEST(SupportSpacing, FixedTeeOfThreeLinesEndsThreeSpans) {
  const std::vector<Judgement> judgements = star(16, 16, 16.01, true).judged_by("support-spacing");
  EXPECT_EQ(verdicts(judgements), (std::vector{Verdict::pass, Verdict::pass, Verdict::fail}));
}

TEST(SupportSpacing, UnionHangsAndABulkheadDoesNot) {
  const auto runs = [](NodeKind fitting) {
    return joined_lines(fitting, std::nullopt, "tube-steel-1/4", 8, "tube-steel-1/4", 8)
        .judged_by("support-spacing");
  };
  EXPECT_EQ(verdicts(runs(NodeKind::union_fitting)), (std::vector{Verdict::fail}));
  EXPECT_EQ(verdicts(runs(NodeKind::bulkhead)), (std::vector{Verdict::pass, Verdict::pass}));
}

TEST(SupportSpacing, ThreeLinesAtAHangingTeeAreThreeRuns) {
  const std::vector<Judgement> judgements = star(8, 4.8, 1).judged_by("support-spacing");
  ASSERT_EQ(judgements.size(), 3u);
  std::vector<double> lengths;
  for (const Judgement& each : judgements) {
    EXPECT_EQ(each.verdict, Verdict::pass);
    EXPECT_DOUBLE_EQ(each.limit.value(), 12.8);
    lengths.push_back(each.value.value());
  }
  std::sort(lengths.begin(), lengths.end());
  EXPECT_DOUBLE_EQ(lengths[0], 5.8);
  EXPECT_DOUBLE_EQ(lengths[1], 9);
  EXPECT_DOUBLE_EQ(lengths[2], 12.8);
}

TEST(SupportSpacing, OneLineThatMakesTwoRunsTooLongIsSaidOnce) {
  // 12 + 5 and 12 + 4 are over 12.8, both because of the 12; 5 + 4 is not.
  const std::vector<Judgement> judgements = star(12, 5, 4).judged_by("support-spacing");
  const Judgement judgement = sole(not_passed(judgements));
  EXPECT_DOUBLE_EQ(judgement.value.value(), 17);
  EXPECT_EQ(judgement.route, "left");
  EXPECT_EQ(judgements.size(), 2u);
}

TEST(SupportSpacing, RunsTooLongForDifferentLinesAreEachSaid) {
  // 9 + 7 and 9 + 6 because of the 9; 7 + 6 because of the 7.
  const std::vector<Judgement> broken = not_passed(star(9, 7, 6).judged_by("support-spacing"));
  ASSERT_EQ(broken.size(), 2u);
  EXPECT_EQ(broken[0].route, "left");
  EXPECT_DOUBLE_EQ(broken[0].value.value(), 16);
  EXPECT_EQ(broken[1].route, "right");
  EXPECT_DOUBLE_EQ(broken[1].value.value(), 13);
}

TEST(SupportSpacing, HeldRunDoesNotHideAFreeEndBehindTheSameLine) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("tee", NodeKind::tee, {12, 0, 0})
      .node("altimeter", NodeKind::instrument, {20, 0, 0})
      .node("loose", NodeKind::end, {12, 7, 0});
  project.route("left", "tube-nylon-1/4", "port", "tee");
  project.route("main", "tube-nylon-1/4", "tee", "altimeter");
  project.route("stub", "tube-nylon-1/4", "tee", "loose");
  // 12 + 8 held, 12 + 7 and 8 + 7 with a free end.
  const std::vector<Judgement> broken = not_passed(project.judged_by("support-spacing"));
  ASSERT_EQ(broken.size(), 3u);
  EXPECT_DOUBLE_EQ(broken[0].limit.value(), 10.8);
  EXPECT_DOUBLE_EQ(broken[1].limit.value(), 5.4);
  EXPECT_DOUBLE_EQ(broken[2].limit.value(), 5.4);
}

// MIL-H-8891A, paragraph above Table II [verified]: an average where sizes differ. (16 + 13.5) / 2
// × 0.8.
TEST(SupportSpacing, DifferentLinesAreHeldToTheAverage) {
  const auto run = [](double length_in) {
    return sole(joined_lines(NodeKind::union_fitting, std::nullopt, "tube-steel-1/4", 5,
                             "tube-aluminium-1/4", length_in - 5)
                    .judged_by("support-spacing"));
  };
  EXPECT_EQ(run(11.8).verdict, Verdict::pass);
  const Judgement judgement = run(11.81);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 11.8);
  EXPECT_TRUE(contains(judgement.source, "; averaged: MIL-H-8891A")) << judgement.source;
}

TEST(SupportSpacing, AveragedRunWarnsWhereOneSpacingIsOnlyPractice) {
  const Judgement judgement = sole(joined_lines(NodeKind::union_fitting, std::nullopt,
                                                "tube-steel-1/4", 10, "tube-nylon-1/4", 10)
                                       .judged_by("support-spacing"));
  EXPECT_EQ(judgement.verdict, Verdict::warn);
}

TEST(SupportSpacing, SpanTooLongForOneSupportAsksForMore) {
  EXPECT_EQ(judged_span("tube-steel-1/4", 32).mend, "add a support 16.0 in from port");
  EXPECT_EQ(judged_span("tube-steel-1/4", 32.01).mend,
            "add supports on main so that no free length is over 16.0 in");
}

TEST(SupportSpacing, MeshOfHangingTeesIsUnknownAndDoesNotTakeForever) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {-5, 0, 0});
  const int tees = 12;
  const auto name = [](int i) { return "tee-" + std::to_string(i); };
  for (int i = 0; i < tees; ++i) project.node(name(i), NodeKind::tee, {1.0 * i, 1.0 * (i % 2), 0});
  project.route("feed", "tube-nylon-1/4", "port", name(0));
  for (int i = 0; i < tees; ++i)
    for (int j = i + 1; j < tees; ++j)
      project.route(name(i) + "-" + name(j), "tube-nylon-1/4", name(i), name(j));
  const std::vector<Judgement> broken = not_passed(project.judged_by("support-spacing"));
  EXPECT_TRUE(std::any_of(broken.begin(), broken.end(), [](const Judgement& each) {
    return each.verdict == Verdict::unknown && contains(each.message, "more ways than");
  }));
}

}  // namespace
}  // namespace linewright
