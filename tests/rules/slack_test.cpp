// Hose 5 to 8 % longer than what it spans: US Navy 14105 p. 5-11 [verified], the share taken of the
// distance.

#include "rules/slack.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <optional>
#include <string>
#include <vector>

#include "rules/small_project.hpp"

namespace linewright {
namespace {

/// A hose drawn straight over 20 in, cut to a length.
SmallProject straight_hose(std::optional<double> length_in) {
  SmallProject project;
  project.node("firewall", NodeKind::bulkhead, {30, 0, 0})
      .node("gauge", NodeKind::instrument, {50, 0, 0});
  project.route("pressure", "hose-rubber-1/4", "firewall", "gauge").length_in = length_in;
  return project;
}

Judgement judged_length(std::optional<double> length_in) {
  return sole(straight_hose(length_in).judged_by(slack_rule()));
}

TEST(Slack, HoseOverTwentyInchesFailsAtTwentyAndAHalfAndPassesAtTwentyOne) {
  EXPECT_EQ(judged_length(20.0).verdict, Verdict::fail);
  EXPECT_EQ(judged_length(20.5).verdict, Verdict::fail);
  EXPECT_EQ(judged_length(21.0).verdict, Verdict::pass);
}

TEST(Slack, BothLimitsPassAndAHundredthBeyondFails) {
  EXPECT_EQ(judged_length(20.99).verdict, Verdict::fail);
  EXPECT_EQ(judged_length(21.0).verdict, Verdict::pass);
  EXPECT_EQ(judged_length(21.6).verdict, Verdict::pass);
  EXPECT_EQ(judged_length(21.61).verdict, Verdict::fail);
}

TEST(Slack, ShortHoseIsMeasuredPlacedAndSaid) {
  const Judgement judgement = judged_length(20.5);
  EXPECT_EQ(judgement.rule, "slack");
  EXPECT_EQ(judgement.route, "pressure");
  EXPECT_DOUBLE_EQ(judgement.value.value(), 20.5);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 21);
  EXPECT_EQ(judgement.sense, LimitSense::at_least);
  EXPECT_EQ(judgement.unit, Unit::inch);
  EXPECT_DOUBLE_EQ(judgement.distance_in.value(), 10);
  EXPECT_EQ(judgement.at.value(), (Vec3{40, 0, 0}));
  EXPECT_EQ(judgement.location.line, SmallProject::line_of_route(0));
  EXPECT_EQ(judgement.message,
            "the hose is 20.5 in long over 20.0 in between its supports: 2.5 % slack, under 5 %");
  EXPECT_TRUE(contains(judgement.source, "US Navy 14105 p. 5-11"));
  EXPECT_TRUE(contains(judgement.source, "(verified)"));
  EXPECT_EQ(judgement.mend, "make the hose 21.0 in to 21.6 in long");
}

TEST(Slack, LongHoseIsMeasuredAndSaid) {
  const Judgement judgement = judged_length(22);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 21.6);
  EXPECT_EQ(judgement.sense, LimitSense::at_most);
  EXPECT_NEAR(judgement.margin().value(), -0.4, 1e-12);
  EXPECT_TRUE(contains(judgement.message, "10.0 % slack, over 8 %")) << judgement.message;
  EXPECT_EQ(judgement.mend, "shorten the hose to 21.6 in or less, or hold it where it turns");
}

TEST(Slack, DrawnLengthCountsWhereNoneIsStated) {
  const Judgement judgement = judged_length(std::nullopt);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(judgement.value.value(), 20);
  EXPECT_TRUE(contains(judgement.message, ": 0.0 % slack")) << judgement.message;
}

// Rounding may leave a hose drawn dead straight a hair shorter than its own parts: that is no
// slack, not "-0.0 %" of it.
TEST(Slack, StraightHoseOnClampsNeverHasMinusZeroSlack) {
  for (int i = 1; i < 200; ++i) {
    SmallProject project;
    const Vec3 far{7.1 + i, 3.3, 5.7};
    project.node("firewall", NodeKind::bulkhead, {0, 0, 0})
        .node("gauge", NodeKind::instrument, far);
    project.route("pressure", "hose-rubber-1/4", "firewall", "gauge",
                  {clamped(far * 0.1), clamped(far * 0.3), clamped(far * 0.7), clamped(far * 0.9)});
    const Judgement judgement = sole(project.judged_by(slack_rule()));
    EXPECT_TRUE(contains(judgement.message, ": 0.0 % slack")) << judgement.message;
  }
}

/// A hose drawn as a bow: two legs from the ends up to a corner `rise` above the middle of 20 in.
Judgement bowed(double rise_in) {
  SmallProject project;
  project.node("firewall", NodeKind::bulkhead, {0, 0, 0})
      .node("gauge", NodeKind::instrument, {20, 0, 0});
  project.route("pressure", "hose-rubber-1/4", "firewall", "gauge",
                {bent({10, 0, rise_in}, 0.001)});
  return sole(project.judged_by(slack_rule()));
}

TEST(Slack, DrawnBowIsSetAgainstTheDistanceBetweenSupports) {
  // Legs of 10.5 in: √(10.5² - 10²) up, less a hair at the corner.
  const Judgement passes = bowed(std::sqrt(10.51 * 10.51 - 100));
  EXPECT_EQ(passes.verdict, Verdict::pass);
  EXPECT_NEAR(passes.value.value(), 21.02, 0.001);
  EXPECT_DOUBLE_EQ(passes.limit.value(), 21);
  EXPECT_EQ(bowed(std::sqrt(10.49 * 10.49 - 100)).verdict, Verdict::fail);
  EXPECT_EQ(bowed(std::sqrt(10.81 * 10.81 - 100)).verdict, Verdict::fail);
}

TEST(Slack, ClampShortensWhatTheHoseMaySpan) {
  // Held at its corner the hose is straight between supports: nothing is left to give.
  SmallProject project;
  project.node("firewall", NodeKind::bulkhead, {0, 0, 0})
      .node("gauge", NodeKind::instrument, {20, 0, 0});
  RoutePoint top = clamped({10, 0, 3.2});
  top.bend_in = 0.001;
  project.route("pressure", "hose-rubber-1/4", "firewall", "gauge", {top});
  const Judgement judgement = sole(project.judged_by(slack_rule()));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(judgement.value.value(), 2 * std::hypot(10, 3.2), 0.001);
  EXPECT_NEAR(judgement.limit.value(), 1.05 * 2 * std::hypot(10, 3.2), 0.001);
}

// What the mend says, done to the letter, passes although it is rounded.
TEST(Slack, BothLengthsOfTheMendPass) {
  for (const double span_in : {3.33, 7.77, 9.51, 11.13, 19.07, 33.33}) {
    SmallProject project;
    project.node("firewall", NodeKind::bulkhead, {0, 0, 0})
        .node("gauge", NodeKind::instrument, {span_in, 0, 0});
    project.route("pressure", "hose-rubber-1/4", "firewall", "gauge").length_in = span_in;
    const std::string mend = sole(project.judged_by(slack_rule())).mend;
    double least = 0;
    double most = 0;
    ASSERT_EQ(std::sscanf(mend.c_str(), "make the hose %lf in to %lf in long", &least, &most), 2)
        << mend;
    for (const double length_in : {least, most}) {
      project.project.routes[0].length_in = length_in;
      EXPECT_EQ(sole(project.judged_by(slack_rule())).verdict, Verdict::pass) << mend;
    }
  }
}

TEST(Slack, OnlyHosesAreJudged) {
  for (const char* line :
       {"tube-aluminium-1/4", "tube-nylon-1/4", "cable-7x19-1/8-steel", "wire-1/4"}) {
    SmallProject project;
    project.node("forward", NodeKind::bulkhead, {0, 0, 0})
        .node("aft", NodeKind::bulkhead, {20, 0, 0});
    project.route("main", line, "forward", "aft");
    EXPECT_TRUE(project.judged_by(slack_rule()).empty()) << line;
  }
}

}  // namespace
}  // namespace linewright
