// What to cut and how to bend it, on routes that can be worked out by hand. Tolerances of 1e-12 are
// some tens of roundings of a figure of ten.

#include "planning/cutlist.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "oracles/random_path.hpp"
#include "planning/tube_project.hpp"
#include "rules/casing_project.hpp"

namespace linewright {
namespace {

using oracles::Random;
using oracles::RigidMotion;
using std::numbers::pi;

/// Rotation between the two bends of a tube that runs aft, to the right, and last along `last`.
double rotation_deg(Vec3 last) {
  const Vec3 end = Vec3{10, 10, 0} + last * 10;
  return cut_along({{{0, 0, 0}, 0}, {{10, 0, 0}, 1}, {{10, 10, 0}, 1}, {end, 0}})
      .bends.at(1)
      .rotation_deg;
}

TEST(CutList, StraightTubeIsCutWithItsAllowance) {
  TubeProject project;
  project.node("port", {0, 0, 0}).node("tee", {30, 40, 0});
  project.route("static-left", "port", "tee");
  const RouteCut cut = project.cut().routes.at(0);
  EXPECT_EQ(cut.name, "static-left");
  EXPECT_EQ(cut.system, "static");
  EXPECT_EQ(cut.line, "tube-aluminium-1/4");
  EXPECT_TRUE(cut.rigid);
  EXPECT_DOUBLE_EQ(cut.length_in, 50);
  EXPECT_DOUBLE_EQ(cut.cut_length_in, 50.5);
  EXPECT_DOUBLE_EQ(cut.volume_in3, pi / 4 * 0.18 * 0.18 * 50);
  EXPECT_DOUBLE_EQ(cut.mass_lb.value(), 0.125);
  EXPECT_DOUBLE_EQ(cut.minimum_bend_radius_in.value(), 0.5625);
  EXPECT_TRUE(cut.bends.empty());
  EXPECT_DOUBLE_EQ(cut.straight_after_in, 50);
}

TEST(CutList, MassAndBendLimitStayOpenWhereTheLineDoesNotSay) {
  TubeProject project;
  project.node("a", {0, 0, 0}).node("b", {10, 0, 0});
  project.route("hose", "a", "b").line = "hose-rubber-1/4";
  const RouteCut cut = project.cut().routes.at(0);
  EXPECT_FALSE(cut.rigid);
  EXPECT_FALSE(cut.mass_lb);
  EXPECT_FALSE(cut.minimum_bend_radius_in);
}

TEST(CutList, HoseIsCutToItsStatedLength) {
  TubeProject project;
  project.node("a", {0, 0, 0}).node("b", {10, 0, 0});
  Route& stated = project.route("stated", "a", "b");
  stated.line = "hose-rubber-1/4";
  stated.length_in = 10.6;
  project.route("drawn", "a", "b").line = "hose-rubber-1/4";
  const CutList list = project.cut();
  EXPECT_DOUBLE_EQ(list.routes.at(0).cut_length_in, 10.6);
  EXPECT_DOUBLE_EQ(list.routes.at(0).length_in, 10);
  EXPECT_DOUBLE_EQ(list.routes.at(1).cut_length_in, 11);
}

// The casing as it is led, and what the wire stands out of it at both ends.
TEST(CutList, WireOfACasingGoesFromPinToPin) {
  SmallProject project = casing_project();
  const RouteCut cut = cut_list(prepare(project.project)).routes.at(0);
  EXPECT_TRUE(cut.casing);
  EXPECT_EQ(cut.length_in, 40);
  EXPECT_EQ(cut.cut_length_in, 40);
  EXPECT_EQ(cut.wire_length_in, 46);
  EXPECT_EQ(cut.volume_in3, 0);
  throttle(project).run_out.reset();
  EXPECT_FALSE(cut_list(prepare(project.project)).routes.at(0).wire_length_in);
}

TEST(CutList, ScheduleGivesStraightsMarksAndAngles) {
  const RouteCut cut =
      cut_along({{{0, 0, 0}, 0}, {{10, 0, 0}, 2}, {{10, 9, 0}, 1}, {{10, 9, 7}, 0}});
  EXPECT_NEAR(cut.length_in, 10 + 9 + 7 - 2 * 2 - 2 * 1 + pi * 3 / 2, 1e-12);
  ASSERT_EQ(cut.bends.size(), 2u);
  const BendStep& first = cut.bends[0];
  EXPECT_EQ(first.at, (Vec3{10, 0, 0}));
  EXPECT_DOUBLE_EQ(first.radius_in, 2);
  EXPECT_NEAR(first.angle_deg, 90, 1e-12);
  EXPECT_EQ(first.rotation_deg, 0);
  EXPECT_NEAR(first.straight_before_in, 8, 1e-12);
  EXPECT_NEAR(first.mark_start_in, 8, 1e-12);
  EXPECT_NEAR(first.mark_end_in, 8 + pi, 1e-12);
  EXPECT_NEAR(first.distance_in, 8 + pi / 2, 1e-12);
  const BendStep& second = cut.bends[1];
  EXPECT_NEAR(second.straight_before_in, 9 - 2 - 1, 1e-12);
  EXPECT_NEAR(second.mark_start_in, 8 + pi + 6, 1e-12);
  EXPECT_NEAR(second.mark_end_in, 8 + pi + 6 + pi / 2, 1e-12);
  EXPECT_NEAR(cut.straight_after_in, 6, 1e-12);
}

TEST(CutList, RotationFollowsTheRightHandAboutTheWayTheLineRuns) {
  // The middle straight runs to the right (+y). A last leg forward (-x) closes a U: nothing to
  // turn. With the thumb of the right hand along +y the fingers go from there by way of up (+z) to
  // aft: so the bends' plane turns, and the tube in the bender about -y.
  EXPECT_DOUBLE_EQ(rotation_deg({-1, 0, 0}), 0);
  EXPECT_DOUBLE_EQ(rotation_deg({1, 0, 0}), 180);
  EXPECT_DOUBLE_EQ(rotation_deg({0, 0, 1}), 90);
  EXPECT_DOUBLE_EQ(rotation_deg({0, 0, -1}), -90);
  EXPECT_NEAR(rotation_deg(unit(Vec3{-1, 0, 1})), 45, 1e-12);
}

TEST(CutList, HalfATurnIsNeverNegative) {
  Random random(3);
  for (int trial = 0; trial < 200; ++trial) {
    const RigidMotion motion(random);
    const RouteCut cut = cut_along(motion.move(std::vector<PathCorner>{
        {{0, 0, 0}, 0}, {{10, 0, 0}, 1}, {{10, 10, 0}, 1}, {{20, 10, 0}, 1}, {{20, 0, 0}, 0}}));
    EXPECT_EQ(cut.bends.at(1).rotation_deg, 180);
    EXPECT_EQ(cut.bends.at(2).rotation_deg, 0);
    EXPECT_FALSE(std::signbit(cut.bends.at(2).rotation_deg));
  }
}

TEST(CutList, SharpCornersOfACableAreNotBends) {
  TubeProject project;
  project.node("pedal", {0, 0, 0}).node("horn", {10, 20, 0});
  Route& route = project.route("rudder", "pedal", "horn", {{{6, 3, 0}, 0}, {{10, 0, 0}, 1}});
  route.system = SystemKind::cable;
  route.system_name = "cable";
  route.line = "cable-7x19-1/8-steel";
  const RouteCut cut = project.cut().routes.at(0);
  ASSERT_EQ(cut.bends.size(), 1u);
  EXPECT_EQ(cut.bends[0].at, (Vec3{10, 0, 0}));
  // Straights on both sides of the sharp corner count as one.
  EXPECT_NEAR(cut.bends[0].straight_before_in + cut.bends[0].mark_end_in -
                  cut.bends[0].mark_start_in + cut.straight_after_in,
              cut.length_in, 1e-12);
}

TEST(CutList, BendsThatDoNotFitKeepTheirDrawnRadius) {
  const RouteCut cut =
      cut_along({{{0, 0, 0}, 0}, {{10, 0, 0}, 2}, {{10, 3, 0}, 2}, {{30, 3, 0}, 0}});
  ASSERT_EQ(cut.bends.size(), 2u);
  EXPECT_DOUBLE_EQ(cut.bends[0].radius_in, 2);
  EXPECT_NEAR(cut.bends[1].straight_before_in, -1, 1e-12);
}

TEST(CutList, ReversalIsListedAndNumbersStayFinite) {
  const std::vector<PathCorner> corners{
      {{0, 0, 0}, 0}, {{10, 0, 0}, 2}, {{4, 0, 0}, 1}, {{4, 9, 0}, 0}};
  const RouteCut cut = cut_along(corners);
  ASSERT_EQ(cut.bends.size(), 2u);
  EXPECT_NEAR(cut.bends[0].angle_deg, 180, 1e-12);
  EXPECT_DOUBLE_EQ(cut.bends[0].straight_before_in, 10);
  EXPECT_EQ(cut.bends[1].rotation_deg, 0);
  EXPECT_NEAR(cut.bends[1].straight_before_in, 5, 1e-12);
}

TEST(CutList, SystemsComeInOrderOfFirstUseAndCountEachNodeOnce) {
  TubeProject project;
  project.node("port-left", {0, -5, 0}, NodeKind::static_port)
      .node("port-right", {0, 5, 0}, NodeKind::static_port)
      .node("tee", {0, 0, 0}, NodeKind::tee, 0.02)
      .node("altimeter", {-40, 0, 0}, NodeKind::instrument, 6.0)
      .node("probe", {0, 0, 20}, NodeKind::pitot_probe)
      .node("airspeed", {-20, 0, 20}, NodeKind::instrument);
  project.route("left", "port-left", "tee");
  Route& pitot = project.route("pitot", "probe", "airspeed");
  pitot.system = SystemKind::pitot;
  pitot.system_name = "pitot";
  project.route("right", "port-right", "tee");
  project.route("forward", "tee", "altimeter");
  project.route("second way round", "tee", "altimeter");
  const CutList list = project.cut();
  ASSERT_EQ(list.routes.size(), 5u);
  EXPECT_EQ(list.routes[1].name, "pitot");
  ASSERT_EQ(list.systems.size(), 2u);
  EXPECT_EQ(list.systems[0].name, "static");
  EXPECT_DOUBLE_EQ(list.systems[0].length_in, 5 + 5 + 40 + 40);
  EXPECT_NEAR(list.systems[0].volume_in3, pi / 4 * 0.18 * 0.18 * 90 + 6.02, 1e-12);
  EXPECT_TRUE(list.systems[0].nodes_without_volume.empty());
  EXPECT_EQ(list.systems[1].name, "pitot");
  EXPECT_EQ(list.systems[1].nodes_without_volume, std::vector<std::string>{"airspeed"});
}

TEST(CutList, TwoSystemsOfAKindStayApart) {
  TubeProject project;
  project.node("a", {0, 0, 0}).node("b", {10, 0, 0}, NodeKind::tee).node("c", {0, 9, 0});
  project.route("main", "a", "b");
  project.route("alternate", "c", "b").system_name = "static: alternate";
  const CutList list = project.cut();
  ASSERT_EQ(list.systems.size(), 2u);
  EXPECT_EQ(list.systems[1].name, "static: alternate");
  EXPECT_EQ(list.systems[0].nodes_without_volume, std::vector<std::string>{"b"});
  EXPECT_EQ(list.systems[1].nodes_without_volume, std::vector<std::string>{"b"});
}

TEST(CutList, CablesHoldNoAir) {
  TubeProject project;
  project.node("pedal", {0, 0, 0}, NodeKind::pedal, 3.0).node("tee", {10, 0, 0}, NodeKind::tee);
  Route& route = project.route("rudder", "pedal", "tee");
  route.system = SystemKind::cable;
  route.system_name = "cable";
  route.line = "cable-7x19-1/8-steel";
  const SystemCut system = project.cut().systems.at(0);
  EXPECT_DOUBLE_EQ(system.length_in, 10);
  EXPECT_EQ(system.volume_in3, 0);
  EXPECT_TRUE(system.nodes_without_volume.empty());
}

}  // namespace
}  // namespace linewright
