// Water in pressure lines. Nylon tube of 0.171 in bore; corners are sharp where no bend is named.

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "rules/small_project.hpp"

namespace linewright {
namespace {

constexpr double bore_in = 0.171;
constexpr double bore_area_in2 = std::numbers::pi / 4 * bore_in * bore_in;
const std::string tube = "tube-nylon-1/4";

SmallProject& in_attitudes(SmallProject& project, const std::vector<Attitude>& attitudes) {
  project.project.attitudes = attitudes;
  return project;
}

Attitude pitched(const std::string& name, double pitch_deg) {
  return {name, pitch_deg, 0, {}};
}

/// A line from a port through one corner to an instrument.
SmallProject port_to_altimeter(Vec3 port, const std::vector<RoutePoint>& points, Vec3 altimeter) {
  SmallProject project;
  project.node("port", NodeKind::static_port, port)
      .node("altimeter", NodeKind::instrument, altimeter);
  project.route("static", tube, "port", "altimeter", points);
  in_attitudes(project, {pitched("level flight", 0)});
  return project;
}

TEST(Drainage, ALineThatRisesFromItsPortToTheInstrumentPasses) {
  const Judgement dry =
      sole(port_to_altimeter({100, 0, 10}, {}, {60, 0, 20}).judged_by("drainage"));
  EXPECT_EQ(dry.verdict, Verdict::pass);
  EXPECT_EQ(dry.value, 0);
  EXPECT_EQ(dry.limit, 0);
  EXPECT_EQ(dry.unit, Unit::cubic_inch);
  EXPECT_EQ(dry.margin(), 0);
  EXPECT_TRUE(contains(dry.message, "level flight"));
  EXPECT_TRUE(dry.mend.empty());
}

TEST(Drainage, ALineThatFallsFromItsPortAndRisesToTheInstrumentFails) {
  // 3-4-5 legs: 15 in down to the corner, 25 in up; water stands 9 in deep up to the port, in all
  // of the near leg and as much of the far one.
  const SmallProject project = port_to_altimeter({100, 0, 19}, {bent({88, 0, 10}, 0)}, {68, 0, 25});
  const Judgement trap = sole(project.judged_by("drainage"));
  EXPECT_EQ(trap.verdict, Verdict::fail);
  EXPECT_EQ(trap.route, "static");
  EXPECT_NEAR(trap.value.value(), bore_area_in2 * 30, 1e-9);
  EXPECT_EQ(trap.limit, 0);
  EXPECT_EQ(trap.at, (Vec3{88, 0, 10}));
  EXPECT_NEAR(trap.distance_in.value(), 15, 1e-12);
  EXPECT_EQ(trap.location.line, SmallProject::line_of_point(0, 0));
  EXPECT_EQ(trap.message, "water stands 9.00 in deep and closes the bore in attitude level flight");
  EXPECT_EQ(trap.mend,
            "raise the point at FS 88.0 BL 0.0 WL 10.0 by 9.00 in, or put a drain at this place");
  EXPECT_TRUE(contains(trap.source, "23.1325(b)(1)(i)"));
  EXPECT_TRUE(contains(trap.source, "(verified)"));
}

TEST(Drainage, TheBottomOfABendIsFoundNotItsCorner) {
  // Radius 2 at legs of 3 in 5: the bottom lies 0.5 in above the corner, at half the way.
  const SmallProject project = port_to_altimeter({104, 0, 22}, {bent({88, 0, 10}, 2)}, {72, 0, 22});
  const Judgement trap = sole(project.judged_by("drainage"));
  EXPECT_NEAR(trap.at->x, 88, 1e-9);
  EXPECT_NEAR(trap.at->z, 10.5, 1e-9);
  EXPECT_TRUE(contains(trap.message, "11.5 in deep")) << trap.message;
  EXPECT_TRUE(contains(trap.mend, "raise the point at FS 88.0 BL 0.0 WL 10.0 by 12.0 in"));
}

TEST(Drainage, ALineThatRisesFirstAndThenFallsToADrainPasses) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {200, 0, 12})
      .node("tee", NodeKind::tee, {150, 0, 8})
      .node("drain", NodeKind::drain, {150, 0, 4})
      .node("altimeter", NodeKind::instrument, {60, 0, 25});
  project.route("main", tube, "port", "tee", {bent({198, 0, 18}, 1)});
  project.route("to-drain", tube, "tee", "drain");
  project.route("up", tube, "tee", "altimeter", {bent({62, 0, 12}, 1.5)});
  in_attitudes(project, {pitched("level flight", 0)});
  const auto judged = project.judged_by("drainage");
  EXPECT_EQ(verdicts(judged), std::vector<Verdict>(3, Verdict::pass));
  // Without the drain the tail below the tee is a dead end that stays full, and so is the low run.
  project.project.nodes[2].kind = NodeKind::cap;
  EXPECT_EQ(not_passed(project.judged_by("drainage")).size(), 1u);
}

TEST(Drainage, ATailBelowTheDrainFails) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {200, 0, 12})
      .node("drain", NodeKind::drain, {150, 0, 8})
      .node("tail", NodeKind::cap, {145, 0, 6});
  project.route("main", tube, "port", "drain");
  project.route("down", tube, "drain", "tail");
  in_attitudes(project, {pitched("level flight", 0)});
  const auto judged = project.judged_by("drainage");
  ASSERT_EQ(judged.size(), 2u);
  const Judgement trap = sole(not_passed(judged));
  EXPECT_EQ(trap.route, "down");
  EXPECT_EQ(trap.with, "tail");
  EXPECT_EQ(trap.location.line, SmallProject::line_of_route(1) + 2);
  EXPECT_NEAR(trap.value.value(), bore_area_in2 * std::sqrt(29), 1e-9);
  EXPECT_EQ(trap.mend, "raise tail by 2.00 in, or put a drain at this place");
}

TEST(Drainage, NothingRunsOutThroughAnInstrumentOrALooseEnd) {
  for (const NodeKind kind : {NodeKind::instrument, NodeKind::end, NodeKind::cap}) {
    SmallProject project = port_to_altimeter({100, 0, 10}, {}, {60, 0, 8});
    project.project.nodes[1].kind = kind;
    EXPECT_EQ(sole(project.judged_by("drainage")).verdict, Verdict::fail);
  }
}

TEST(Drainage, APitotLineRunsOutAtItsProbe) {
  SmallProject project = port_to_altimeter({100, 0, 10}, {}, {60, 0, 20});
  project.project.nodes[0].kind = NodeKind::pitot_probe;
  project.project.routes[0].system = SystemKind::pitot;
  EXPECT_EQ(sole(project.judged_by("drainage")).verdict, Verdict::pass);
}

TEST(Drainage, VentsCablesAndWiresAreNotJudged) {
  SmallProject project = port_to_altimeter({100, 0, 10}, {}, {60, 0, 8});
  for (const SystemKind kind : {SystemKind::vent, SystemKind::cable, SystemKind::wire}) {
    project.project.routes[0].system = kind;
    EXPECT_TRUE(project.judged_by("drainage").empty());
  }
}

/// A line that is level but for one place lower by `depth_in`, slopes about 1 in 50.
SmallProject shallow_low_point(double depth_in) {
  return port_to_altimeter({100, 0, 10}, {bent({100 - 50 * depth_in, 0, 10 - depth_in}, 0)},
                           {20, 0, 30});
}

// That a pool which leaves some of the bore open is no failure: [common practice, no source].
TEST(Drainage, APoolShallowerThanTheBoreWarns) {
  const Judgement trap = sole(shallow_low_point(0.16).judged_by("drainage"));
  EXPECT_EQ(trap.verdict, Verdict::warn);
  EXPECT_TRUE(contains(trap.message, "leaves the bore open")) << trap.message;
  EXPECT_TRUE(contains(trap.source, "common practice"));
}

TEST(Drainage, APoolAsDeepAsTheBoreFails) {
  EXPECT_EQ(sole(shallow_low_point(bore_in).judged_by("drainage")).verdict, Verdict::fail);
}

TEST(Drainage, APoolWithinTheBuildTolerancePasses) {
  SmallProject project = shallow_low_point(0.04);
  project.project.build_tolerance_in = 0.04;
  const Judgement pool = sole(project.judged_by("drainage"));
  EXPECT_EQ(pool.verdict, Verdict::pass);
  EXPECT_TRUE(contains(pool.message, "at most 0.040 in of water stands here"));
  EXPECT_GT(pool.value.value(), 0);
  EXPECT_FALSE(pool.limit.has_value());
  project.project.build_tolerance_in = 0.039;
  EXPECT_EQ(sole(project.judged_by("drainage")).verdict, Verdict::warn);
}

// The quarter is [common practice, no source].
TEST(Drainage, AWideBuildToleranceExcusesNoMoreThanAQuarterOfTheBore) {
  // A quarter of 0.171 in is 0.04275 in.
  for (const double tolerance_in : {0.06, 0.5, 5.0}) {
    SmallProject project = shallow_low_point(0.042);
    project.project.build_tolerance_in = tolerance_in;
    EXPECT_EQ(sole(project.judged_by("drainage")).verdict, Verdict::pass);
    project = shallow_low_point(0.043);
    project.project.build_tolerance_in = tolerance_in;
    EXPECT_EQ(sole(project.judged_by("drainage")).verdict, Verdict::warn);
    project = shallow_low_point(0.09);
    project.project.build_tolerance_in = tolerance_in;
    EXPECT_EQ(sole(project.judged_by("drainage")).verdict, Verdict::warn);
  }
}

TEST(Drainage, AWideBuildToleranceDoesNotExcuseAFullBore) {
  SmallProject project = shallow_low_point(0.2);
  project.project.build_tolerance_in = 0.5;
  EXPECT_EQ(sole(project.judged_by("drainage")).verdict, Verdict::fail);
}

TEST(Drainage, ALineThatDrainsForwardInFlightMayDrainAftOnTheGround) {
  // FS 100 WL 20 to FS 180 WL 26: drains forward level; 12 degrees nose-up the aft end is 10.764 in
  // lower (calc: WL cos - FS sin), and its cap holds water.
  SmallProject project;
  project.node("port", NodeKind::static_port, {100, 0, 20})
      .node("aft", NodeKind::cap, {180, 0, 26});
  project.route("line", tube, "port", "aft");
  in_attitudes(project, {pitched("level flight", 0)});
  EXPECT_EQ(sole(project.judged_by("drainage")).verdict, Verdict::pass);
  in_attitudes(project, {pitched("level flight", 0), pitched("parked", 12)});
  const Judgement trap = sole(project.judged_by("drainage"));
  EXPECT_EQ(trap.verdict, Verdict::fail);
  EXPECT_TRUE(contains(trap.message, "water stands 10.8 in deep")) << trap.message;
  EXPECT_TRUE(contains(trap.message, "in attitude parked"));
  EXPECT_FALSE(contains(trap.message, "level flight"));
}

TEST(Drainage, RollPutsWaterInTheLowWing) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {100, -10, 10})
      .node("right", NodeKind::cap, {100, 10, 10});
  project.route("line", tube, "port", "right");
  in_attitudes(project, {{"left wing down", 0, -5, {}}});
  EXPECT_EQ(sole(project.judged_by("drainage")).verdict, Verdict::pass);
  in_attitudes(project, {{"right wing down", 0, 5, {}}});
  const Judgement trap = sole(project.judged_by("drainage"));
  EXPECT_EQ(trap.verdict, Verdict::fail);
  EXPECT_EQ(trap.with, "right");
  // 20 sin 5 = 1.743 in.
  EXPECT_TRUE(contains(trap.message, "1.74 in deep")) << trap.message;
}

// Nobody raises a line by ten times as much along WL as it lacks [common practice, no source].
TEST(Drainage, OnItsSideALineIsNotToldToBeRaisedAlongWaterlines) {
  const auto mend = [](double share_of_waterline) {
    SmallProject project;
    project.node("port", NodeKind::static_port, {100, -10, 10})
        .node("right", NodeKind::cap, {100, 10, 10});
    project.route("line", tube, "port", "right");
    const double roll_deg = std::acos(share_of_waterline) * 180 / std::numbers::pi;
    in_attitudes(project, {{"on its side", 0, roll_deg, {}}});
    return sole(project.judged_by("drainage")).mend;
  };
  EXPECT_TRUE(contains(mend(0.101), "raise right")) << mend(0.101);
  EXPECT_EQ(mend(0.099), "put a drain at this place");
}

TEST(Drainage, OneTrapInSeveralAttitudesIsToldOnceInItsWorst) {
  SmallProject project = port_to_altimeter({100, 0, 19}, {bent({88, 0, 10}, 0)}, {68, 0, 40});
  in_attitudes(project, {pitched("level flight", 0), pitched("parked", 12), pitched("glide", -6)});
  const Judgement trap = sole(project.judged_by("drainage"));
  // 9 cos 6 + 12 sin 6 = 10.21 in: the port, aft, rises when the nose goes down.
  EXPECT_TRUE(contains(trap.message,
                       "10.2 in deep and closes the bore in attitude glide, also in "
                       "level flight, also in parked"))
      << trap.message;
}

TEST(Drainage, TwoEndsOfALevelRunAreTwoTrapsInTwoAttitudes) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {150, 0, 20})
      .node("tee", NodeKind::tee, {150, 0, 24})
      .node("fore", NodeKind::cap, {110, 0, 24})
      .node("aft", NodeKind::cap, {190, 0, 24});
  project.route("up", tube, "port", "tee");
  project.route("forward", tube, "tee", "fore");
  project.route("aftward", tube, "tee", "aft");
  in_attitudes(project, {pitched("level", 0), pitched("climb", 10), pitched("dive", -10)});
  const auto judged = not_passed(project.judged_by("drainage"));
  ASSERT_EQ(judged.size(), 2u);
  EXPECT_EQ(judged[0].with, "aft");
  EXPECT_EQ(judged[1].with, "fore");
}

TEST(Drainage, WithoutAttitudesLevelFlightIsJudgedAndTheMessageSaysSo) {
  SmallProject project = port_to_altimeter({100, 0, 10}, {}, {60, 0, 20});
  project.project.attitudes.clear();
  const Judgement dry = sole(project.judged_by("drainage"));
  EXPECT_EQ(dry.verdict, Verdict::pass);
  EXPECT_TRUE(contains(dry.message, "the project states no attitudes")) << dry.message;
  project.project.nodes[1].at.z = 5;
  const Judgement trap = sole(project.judged_by("drainage"));
  EXPECT_EQ(trap.verdict, Verdict::fail);
  EXPECT_TRUE(contains(trap.message, "the project states no attitudes")) << trap.message;
}

TEST(Drainage, ASystemWithoutAnyOutletFailsOnce) {
  SmallProject project;
  project.node("a", NodeKind::bulkhead, {100, 0, 10})
      .node("b", NodeKind::bulkhead, {100, 0, 20})
      .node("c", NodeKind::instrument, {100, 10, 20});
  project.route("first", tube, "a", "b");
  project.route("second", tube, "b", "c");
  const Judgement shut = sole(project.judged_by("drainage"));
  EXPECT_EQ(shut.verdict, Verdict::fail);
  EXPECT_NEAR(shut.value.value(), bore_area_in2 * 20, 1e-9);
  EXPECT_EQ(shut.location.line, SmallProject::line_of_route(0));
}

TEST(Drainage, AWaiverNearTheTrapAcceptsIt) {
  SmallProject project = port_to_altimeter({100, 0, 19}, {bent({88, 0, 10}, 0)}, {68, 0, 25});
  Waiver& waiver = project.waive("drainage", "static");
  waiver.near = Vec3{88, 0, 10};
  waiver.within_in = 1;
  EXPECT_EQ(sole(project.judged("drainage")).verdict, Verdict::waived);
}

TEST(Drainage, AMendOfManyPointsNamesThreeAndCountsTheRest) {
  std::vector<RoutePoint> points;
  for (int i = 0; i < 6; ++i) points.push_back(bent({95.0 - 5 * i, 0, 5 + 0.1 * i}, 0.5));
  const Judgement trap =
      sole(port_to_altimeter({100, 0, 10}, points, {60, 0, 20}).judged_by("drainage"));
  EXPECT_EQ(trap.mend,
            "raise the point at FS 95.0 BL 0.0 WL 5.0 by 5.00 in, the point at FS 90.0 BL 0.0 WL "
            "5.1 by 4.90 in, the point at FS 85.0 BL 0.0 WL 5.2 by 4.80 in and the 3 other low "
            "points beside them to the same height in level flight, or put a drain at this place");
}

// Slope toward drains: AC 43.13-1B para 12-61 c [verified].
TEST(Drainage, ALevelLineIsWarnedOfOnceWithEachOfItsLevelParts) {
  const SmallProject project =
      port_to_altimeter({100, 0, 10}, {bent({80, 0, 10}, 0), bent({70, 0, 14}, 0)}, {60, 0, 14});
  const Judgement level = sole(project.judged_by("drainage"));
  EXPECT_EQ(level.verdict, Verdict::warn);
  EXPECT_NEAR(level.value.value(), 0, 1e-9);
  EXPECT_EQ(level.limit, 1);
  EXPECT_EQ(level.unit, Unit::degree);
  EXPECT_EQ(level.at, (Vec3{65, 0, 14}));  // of two as level the forward one
  EXPECT_EQ(level.message,
            "the line lies level in level flight from 0.000 to 20.0 in, 30.8 to 40.8 in from port: "
            "as built, water may stand there");
  EXPECT_EQ(level.mend,
            "let it fall toward a port, probe or drain by 0.210 in or more in each 12.0 in");
}

TEST(Drainage, ALineLevelInFlightThatFallsWhenParkedPasses) {
  SmallProject project = port_to_altimeter({100, 0, 10}, {}, {60, 0, 10});
  in_attitudes(project, {pitched("level flight", 0), pitched("parked", 12)});
  EXPECT_EQ(not_passed(project.judged_by("drainage")).size(), 0u);
}

TEST(Drainage, ALevelPartAsLongAsAFittingIsLetPass) {
  const auto with_level = [](double length_in) {
    return port_to_altimeter({100, 0, 10}, {bent({80, 0, 12}, 0), bent({80 - length_in, 0, 12}, 0)},
                             {60, 0, 16});
  };
  EXPECT_EQ(sole(with_level(1).judged_by("drainage")).verdict, Verdict::pass);
  EXPECT_EQ(sole(with_level(1.01).judged_by("drainage")).verdict, Verdict::warn);
}

}  // namespace
}  // namespace linewright
