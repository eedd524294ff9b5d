// Arcs and straights between corners, supports and fittings. A square corner takes its own radius
// off each leg, which makes every straight here a subtraction.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "rules/small_project.hpp"

namespace linewright {
namespace {

using std::numbers::pi;

/// `first` aft, a square turn of the radius, `second` to the right.
SmallProject square_turn(const std::string& line, double radius_in, double first_in,
                         double second_in) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {first_in, second_in, 0});
  project.route("static-left", line, "port", "altimeter", {bent({first_in, 0, 0}, radius_in)});
  return project;
}

/// Two square turns of the radius, `apart` from corner to corner.
SmallProject step(const std::string& line, double radius_in, double apart_in) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {40, apart_in, 0});
  project.route("static-left", line, "port", "altimeter",
                {bent({20, 0, 0}, radius_in), bent({20, apart_in, 0}, radius_in)});
  return project;
}

/// The straight before the only bend, then the straight after it.
std::vector<Judgement> judged(const SmallProject& project) {
  return project.judged_by("bend-fit");
}

// Nut and sleeve: 2 × OD [common practice, no source].
TEST(BendFit, MetalTubeWantsTwoDiametersOfStraightAtAFitting) {
  EXPECT_EQ(verdicts(judged(square_turn("tube-aluminium-1/4", 0.5625, 1.0625, 1.0625))),
            (std::vector{Verdict::pass, Verdict::pass}));
  EXPECT_EQ(verdicts(judged(square_turn("tube-aluminium-1/4", 0.5625, 1.0525, 1.0625))),
            (std::vector{Verdict::warn, Verdict::pass}));
  EXPECT_EQ(verdicts(judged(square_turn("tube-aluminium-1/4", 0.5625, 1.0625, 1.0525))),
            (std::vector{Verdict::pass, Verdict::warn}));
}

// One OD straight before bending [verified: a pneumatic-valve user manual, section on piping].
TEST(BendFit, PlasticTubeMustHaveOneDiameterOfStraightAtAFitting) {
  EXPECT_EQ(verdicts(judged(square_turn("tube-nylon-1/4", 1, 1.25, 1.25))),
            (std::vector{Verdict::pass, Verdict::pass}));
  EXPECT_EQ(verdicts(judged(square_turn("tube-nylon-1/4", 1, 1.24, 1.25))),
            (std::vector{Verdict::fail, Verdict::pass}));
  EXPECT_EQ(verdicts(judged(square_turn("tube-nylon-1/4", 1, 1.25, 1.24))),
            (std::vector{Verdict::pass, Verdict::fail}));
}

TEST(BendFit, ShortStraightIsMeasuredPlacedAndSaid) {
  const Judgement judgement =
      not_passed(judged(square_turn("tube-aluminium-1/4", 0.5625, 0.8125, 5))).at(0);
  EXPECT_EQ(judgement.rule, "bend-fit");
  EXPECT_EQ(judgement.route, "static-left");
  EXPECT_DOUBLE_EQ(judgement.value.value(), 0.25);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 0.5);
  EXPECT_EQ(judgement.unit, Unit::inch);
  EXPECT_EQ(judgement.sense, LimitSense::at_least);
  EXPECT_DOUBLE_EQ(judgement.distance_in.value(), 0.125);
  EXPECT_NEAR(distance(judgement.at.value(), {0.125, 0, 0}), 0, 1e-12);
  EXPECT_EQ(judgement.location.line, SmallProject::line_of_point(0, 0));
  EXPECT_EQ(judgement.message, "only 0.250 in straight between port and the bend at point 1");
  EXPECT_EQ(judgement.source, "nut and sleeve length (common practice, no source)");
  EXPECT_EQ(judgement.mend, "move the corner 0.250 in farther along");
}

TEST(BendFit, LastStraightIsPlacedAtItsMiddle) {
  const Judgement judgement = not_passed(judged(square_turn("tube-nylon-1/4", 1, 5, 1.1))).at(0);
  EXPECT_NEAR(judgement.value.value(), 0.1, 1e-12);
  EXPECT_NEAR(judgement.distance_in.value(), 4 + pi / 2 + 0.1 / 2, 1e-12);
  EXPECT_EQ(judgement.message, "only 0.100 in straight between the bend at point 1 and altimeter");
}

TEST(BendFit, JudgesAStraightBesideAnArcWhicheverEndTheArcIsAt) {
  // A sharp corner, which has no radius to lose, 5 in before or after a rounded one.
  for (const bool sharp_first : {false, true}) {
    SmallProject project;
    project.node("port", NodeKind::static_port, {0, 0, 0})
        .node("altimeter", NodeKind::instrument, {30, 0, 0});
    const RoutePoint sharp = bent({sharp_first ? 10.0 : 20.0, 5, 0}, 0);
    const RoutePoint round = bent({sharp_first ? 20.0 : 10.0, 5, 0}, 1);
    project.route("static-left", "tube-nylon-1/4", "port", "altimeter",
                  sharp_first ? std::vector{sharp, round} : std::vector{round, sharp});
    std::vector<double> straights;
    for (const Judgement& judgement : judged(project))
      if (judgement.message.rfind("the straight", 0) == 0)
        straights.push_back(judgement.value.value());
    std::sort(straights.begin(), straights.end());
    // The turn of the round corner takes tan(26.6 / 2 deg) off each leg: 0.236 in.
    ASSERT_EQ(straights.size(), 2u) << sharp_first;
    EXPECT_NEAR(straights[0], 10 - 0.2361, 1e-4);
    EXPECT_NEAR(straights[1], std::hypot(10, 5) - 0.2361, 1e-4);
  }
}

// What a bender grips: 1 × OD [common practice, no source].
TEST(BendFit, MetalTubeWantsOneDiameterBetweenBends) {
  EXPECT_TRUE(not_passed(judged(step("tube-aluminium-1/4", 0.5625, 1.375))).empty());
  const Judgement judgement = not_passed(judged(step("tube-aluminium-1/4", 0.5625, 1.365))).at(0);
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_NEAR(judgement.value.value(), 0.24, 1e-12);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 0.25);
  EXPECT_EQ(judgement.message, "only 0.240 in straight between the bends at point 1 and point 2");
  EXPECT_TRUE(contains(judgement.source, "what a bender grips"));
  EXPECT_EQ(judgement.location.line, SmallProject::line_of_point(0, 1));
}

TEST(BendFit, HoseNeedsRoomForItsArcsAlone) {
  EXPECT_TRUE(not_passed(judged(step("hose-rubber-3/16", 4, 8))).empty());
  const Judgement judgement = not_passed(judged(step("hose-rubber-3/16", 4, 7.99))).at(0);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(judgement.value.value(), -0.01, 1e-12);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 0);
}

TEST(BendFit, ArcsThatOverlapFailBySoMuch) {
  const std::vector<Judgement> broken = not_passed(judged(step("tube-steel-1/4", 0.875, 1.5)));
  ASSERT_EQ(broken.size(), 1u);
  EXPECT_EQ(broken[0].verdict, Verdict::fail);
  EXPECT_NEAR(broken[0].value.value(), -0.25, 1e-12);
  EXPECT_EQ(broken[0].limit.value(), 0);
  EXPECT_EQ(broken[0].message,
            "the bend does not fit: it lacks 0.250 in between the bends at point 1 and point 2");
  EXPECT_EQ(broken[0].source, "geometry (calculated)");
  EXPECT_EQ(broken[0].mend,
            "move the corners 0.500 in farther apart, or bend to a smaller radius if the line "
            "stands it");
}

TEST(BendFit, ArcTooWideForItsLegToAFittingFails) {
  const std::vector<Judgement> broken =
      not_passed(judged(square_turn("tube-nylon-1/4", 1, 0.9, 5)));
  ASSERT_EQ(broken.size(), 1u);
  EXPECT_EQ(broken[0].verdict, Verdict::fail);
  EXPECT_NEAR(broken[0].value.value(), -0.1, 1e-12);
  EXPECT_TRUE(contains(broken[0].message, "lacks 0.100 in between port and")) << broken[0].message;
}

TEST(BendFit, FollowingTheMendPasses) {
  for (const double apart_in : {1.2, 1.5, 1.9, 1.99}) {
    const Judgement tight = not_passed(judged(step("tube-steel-1/4", 0.875, apart_in))).at(0);
    // "move the corner(s) 0.700 in …"
    const double more_in = std::stod(tight.mend.substr(tight.mend.find_first_of("0123456789")));
    EXPECT_TRUE(not_passed(judged(step("tube-steel-1/4", 0.875, apart_in + more_in))).empty())
        << apart_in;
    EXPECT_FALSE(
        not_passed(judged(step("tube-steel-1/4", 0.875, apart_in + more_in - 0.01))).empty())
        << apart_in << ": no more than is needed";
  }
}

// The numbers said are rounded so that doing what they say is enough.
TEST(BendFit, MendIsRoundedToTheSafeSide) {
  const Judgement judgement = not_passed(judged(square_turn("tube-nylon-1/4", 1, 1.2475, 5))).at(0);
  EXPECT_EQ(judgement.mend, "move the corner 0.003 in farther along");
  EXPECT_TRUE(not_passed(judged(square_turn("tube-nylon-1/4", 1, 1.2475 + 0.003, 5))).empty());
}

TEST(BendFit, PointInsideTheArcFails) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {10, 10, 0});
  project.route("static-left", "tube-nylon-1/4", "port", "altimeter",
                {corner({9.5, 0, 0}), bent({10, 0, 0}, 1)});
  const Judgement judgement = not_passed(judged(project)).at(0);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(judgement.value.value(), 0.5);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 1);
  EXPECT_EQ(judgement.message, "a neighbouring point stands inside the bend at point 2");
  EXPECT_EQ(judgement.mend, "keep points 1.00 in away from the corner");
}

TEST(BendFit, PointAtTheEndOfTheArcPasses) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {10, 10, 0});
  project.route("static-left", "tube-nylon-1/4", "port", "altimeter",
                {corner({9, 0, 0}), bent({10, 0, 0}, 1)});
  EXPECT_TRUE(not_passed(judged(project)).empty());
}

TEST(BendFit, LineThatDoublesBackFails) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {2, 0, 0});
  project.route("static-left", "tube-nylon-1/4", "port", "altimeter", {bent({10, 0, 0}, 1)});
  const Judgement judgement = not_passed(judged(project)).at(0);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.message, "the line doubles back on itself at point 1");
  EXPECT_EQ(judgement.mend, "draw the turn with two corners, a diameter apart");
}

TEST(BendFit, StraightLineIsNotJudged) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {10, 0, 0});
  project.route("static-left", "tube-nylon-1/4", "port", "altimeter", {clamped({5, 0, 0})});
  EXPECT_TRUE(judged(project).empty());
}

TEST(BendFit, CornerWithoutAKnownRadiusIsLeftToBendRadius) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {10, 10, 0});
  project.route("static-left", "tube-steel-1/8", "port", "altimeter", {clamped({10, 0, 0})});
  EXPECT_TRUE(judged(project).empty());
}

/// A support on a square corner. The arc passes it at R (√2 - 1).
Judgement support_on_corner(double offset_in) {
  RoutePoint point = clamped({10, 0, 0});
  point.bend_in = offset_in / (std::sqrt(2.0) - 1);
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {10, 10, 0});
  project.route("static-left", "tube-nylon-1/4", "port", "altimeter", {point});
  return project.judged_by("bend-fit").at(1);
}

// Clamps sit on straights, to the usual build tolerance of 0.06 in [common practice, no source].
TEST(BendFit, SupportSitsOnTheLineUpToSixHundredths) {
  const Judgement on_it = support_on_corner(0.06);
  EXPECT_EQ(on_it.verdict, Verdict::pass);
  EXPECT_EQ(on_it.message, "the support at point 1 sits on the line");
  const Judgement beside = support_on_corner(0.07);
  EXPECT_EQ(beside.verdict, Verdict::warn);
  EXPECT_NEAR(beside.value.value(), 0.07, 1e-12);
  EXPECT_DOUBLE_EQ(beside.limit.value(), 0.06);
  EXPECT_EQ(beside.sense, LimitSense::at_most);
}

TEST(BendFit, SupportOnACornerIsToldWhereTheStraightsAre) {
  const Judgement judgement = support_on_corner(std::sqrt(2.0) - 1);
  EXPECT_EQ(judgement.message,
            "the support at point 1 is drawn on a corner, 0.414 in away from the line as bent");
  EXPECT_EQ(judgement.source, "clamps sit on straights (common practice, no source)");
  // The arc is pi/2 long, from 9 in on.
  EXPECT_EQ(judgement.mend,
            "move the support to the straight before 9.00 in or after 10.6 in from port");
  EXPECT_EQ(judgement.location.line, SmallProject::line_of_point(0, 0));
}

/// A cable that turns by `angle` where `guide` is.
std::vector<Judgement> guided_cable(const RoutePoint& guide, double angle_deg) {
  const double angle = angle_deg * pi / 180;
  SmallProject project;
  project.node("pedal", NodeKind::pedal, {0, 0, 0})
      .node("horn", NodeKind::horn, {guide.at.x + 10 * std::cos(angle), 10 * std::sin(angle), 0});
  project.route("rudder", "cable-7x19-1/8-steel", "pedal", "horn", {guide});
  return project.judged_by("bend-fit");
}

TEST(BendFit, CableThatTurnsWhereNothingGuidesItFails) {
  const Judgement judgement = sole(guided_cable(corner({10, 0, 0}), 3));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(judgement.value.value(), 3, 1e-9);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 0);
  EXPECT_EQ(judgement.unit, Unit::degree);
  EXPECT_EQ(judgement.sense, LimitSense::at_most);
  EXPECT_DOUBLE_EQ(judgement.distance_in.value(), 10);
  EXPECT_EQ(judgement.location.line, SmallProject::line_of_point(0, 0));
  EXPECT_EQ(judgement.message, "the cable turns 3.0 deg where no pulley or fairlead guides it");
  EXPECT_EQ(judgement.mend, "put a pulley or fairlead there, or draw the cable straight");
}

TEST(BendFit, ClampGuidesNoCable) {
  EXPECT_EQ(sole(guided_cable(clamped({10, 0, 0}), 3)).verdict, Verdict::fail);
}

TEST(BendFit, GuidedOrStraightCableIsNotJudged) {
  EXPECT_TRUE(guided_cable(held({10, 0, 0}, HoldKind::pulley), 90).empty());
  EXPECT_TRUE(guided_cable(held({10, 0, 0}, HoldKind::fairlead), 3).empty());
  EXPECT_TRUE(guided_cable(corner({10, 0, 0}), 0).empty());
}

/// A hose with square turns of 4 in: to the right and then upward, or to the left.
std::vector<Judgement> twice_turned(bool upward, const std::vector<RoutePoint>& between) {
  SmallProject project;
  project.node("firewall", NodeKind::bulkhead, {0, 0, 0})
      .node("gauge", NodeKind::instrument, upward ? Vec3{20, 20, 20} : Vec3{40, 20, 0});
  std::vector<RoutePoint> points{bent({20, 0, 0}, 4), bent({20, 20, 0}, 4)};
  points.insert(points.begin() + 1, between.begin(), between.end());
  project.route("pressure", "hose-rubber-1/4", "firewall", "gauge", points);
  return not_passed(project.judged_by("bend-fit"));
}

// TM 1-1500-204-23-2 p. 4-66 [verified].
TEST(BendFit, AHoseThatChangesPlanesIsClampedThere) {
  const Judgement twisted = sole(twice_turned(true, {}));
  EXPECT_EQ(twisted.verdict, Verdict::warn);
  EXPECT_EQ(twisted.value, 0);
  EXPECT_EQ(twisted.limit, 1);
  EXPECT_EQ(twisted.at, (Vec3{20, 10, 0}));
  EXPECT_EQ(twisted.mend, "clamp it there, between the two bends, or draw both in one plane");
  EXPECT_TRUE(twice_turned(true, {clamped({20, 10, 0})}).empty());
  EXPECT_EQ(twice_turned(true, {held({20, 10, 0}, HoldKind::grommet)}).size(), 1u);
  EXPECT_TRUE(twice_turned(false, {}).empty());
}

}  // namespace
}  // namespace linewright
