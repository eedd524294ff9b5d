// A corner that a straight line misses by less than the build tolerance is no bend, for any rule;
// what is meant, or adds up, is one. Build tolerance here: 0.06 in.

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

#include "planning/cutlist.hpp"
#include "rules/small_project.hpp"

namespace linewright {
namespace {

/// A line of 20 in along FS with one corner in the middle, so far off.
SmallProject with_corner(const std::string& line, double off_in, RoutePoint middle = {}) {
  SmallProject project;
  project.project.build_tolerance_in = 0.06;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {20, 0, 0});
  middle.at = {10, off_in, 0};
  project.route("run", line, "port", "altimeter", {middle});
  return project;
}

RouteCut cut_of(const SmallProject& project) {
  return cut_list(prepare(project.project)).routes.at(0);
}

TEST(SlightCorner, IsNotInTheBendSchedule) {
  const RouteCut slight = cut_of(with_corner("tube-aluminium-1/4", 0.059));
  EXPECT_TRUE(slight.bends.empty());
  EXPECT_EQ(straightened_words(slight),
            "straight at its point 1: a straight line misses it by less than the build tolerance");
  EXPECT_NEAR(slight.straight_after_in, 2 * std::hypot(10, 0.059), 1e-9);
  const RouteCut bent = cut_of(with_corner("tube-aluminium-1/4", 0.061));
  EXPECT_EQ(bent.bends.size(), 1u);
  EXPECT_EQ(straightened_words(bent), "");
}

TEST(SlightCorner, AsksForNoRadius) {
  EXPECT_TRUE(with_corner("tube-aluminium-1/4", 0.059).judged_by("bend-radius").empty());
  EXPECT_EQ(with_corner("tube-aluminium-1/4", 0.061).judged_by("bend-radius").size(), 1u);
}

TEST(SlightCorner, IsNoTurnOfACableThatNothingGuides) {
  EXPECT_TRUE(with_corner("cable-7x19-1/8-steel", 0.059).judged_by("bend-fit").empty());
  EXPECT_EQ(sole(with_corner("cable-7x19-1/8-steel", 0.061).judged_by("bend-fit")).verdict,
            Verdict::fail);
}

TEST(SlightCorner, IsNoSharpTurnInASleeve) {
  const auto judged = [](double off_in) {
    SmallProject project = with_corner("cable-7x19-1/8-steel", off_in);
    Sleeve sleeve;
    sleeve.from_in = 8;
    sleeve.to_in = 12;
    sleeve.bore_in = 0.17;
    sleeve.outside_in = 0.25;
    project.project.routes[0].sleeves = {sleeve};
    int fails = 0;
    for (const Judgement& each : project.judged_by("sleeve-cover"))
      fails += each.message.find("turns") != std::string::npos ? 1 : 0;
    return fails;
  };
  EXPECT_EQ(judged(0.059), 0);
  EXPECT_EQ(judged(0.061), 1);
}

TEST(SlightCorner, ABendThatIsStatedIsMeant) {
  EXPECT_EQ(cut_of(with_corner("tube-aluminium-1/4", 0.03, bent({}, 1))).bends.size(), 1u);
}

TEST(SlightCorner, APulleyTurnsTheCableHoweverLittle) {
  RoutePoint pulley = held({}, HoldKind::pulley);
  pulley.diameter_in = 2;
  const PreparedProject prepared =
      prepare(with_corner("cable-7x19-1/8-steel", 0.03, pulley).project);
  EXPECT_FALSE(prepared.routes[0].centreline.bends().at(0).slight);
}

// Twenty of 1 deg, an inch apart.
TEST(SlightCorner, ManyToOneSideAreABend) {
  SmallProject project;
  project.project.build_tolerance_in = 0.06;
  std::vector<RoutePoint> points;
  Vec3 at{0, 0, 0};
  project.node("port", NodeKind::static_port, at);
  for (int i = 0; i <= 20; ++i) {
    const double heading = i * 3.14159265358979323846 / 180;
    at = at + Vec3{std::cos(heading), std::sin(heading), 0};
    if (i < 20) points.push_back(corner(at));
  }
  project.node("altimeter", NodeKind::instrument, at);
  project.route("run", "tube-aluminium-1/4", "port", "altimeter", points);
  double turned_deg = 0;
  for (const BendStep& bend : cut_of(project).bends) turned_deg += bend.angle_deg;
  EXPECT_NEAR(turned_deg, 20, 1e-9);
}

// The drawn path is kept: what lies beside the corner is as near as it is drawn.
TEST(SlightCorner, StandsWhereItIsDrawn) {
  const PreparedProject prepared = prepare(with_corner("tube-aluminium-1/4", 0.05).project);
  const PreparedRoute& route = prepared.routes[0];
  EXPECT_NEAR(route.centreline.at(route.point_distance_in[0]).y, 0.05, 1e-12);
}

// The second leg comes in by atan(0.01 / 10), so that the bend takes tan(45.029 deg) = 1.001 in.
TEST(SlightCorner, TheStraightRunsThroughIt) {
  SmallProject project;
  project.project.build_tolerance_in = 0.06;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {20, 10, 0});
  project.route("run", "tube-aluminium-1/4", "port", "altimeter",
                {corner({10, 0.01, 0}), bent({20, 0, 0}, 1)});
  const RouteCut cut = cut_of(project);
  ASSERT_EQ(cut.bends.size(), 1u);
  EXPECT_NEAR(cut.bends[0].straight_before_in, 18.999, 1e-4);
  const auto fit = project.judged_by("bend-fit");
  ASSERT_EQ(fit.size(), 2u);
  EXPECT_NEAR(fit[0].value.value(), 18.999, 1e-4);
  EXPECT_EQ(fit[0].message, "the straight between port and the bend at point 2 is long enough");
}

}  // namespace
}  // namespace linewright
