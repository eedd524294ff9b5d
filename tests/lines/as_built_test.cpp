#include "lines/as_built.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "lines/prepare.hpp"
#include "lines/route_project.hpp"

namespace linewright {
namespace {

// Straight lines along the axes: lengths are exact but for rounding.
constexpr double rounding_in = 1e-9;

Measurement measure(const std::string& route, int of) {
  Measurement measured;
  measured.route = route;
  measured.of = of;
  measured.on = "2026-11-20";
  measured.by = "AB";
  measured.where = {"built.yaml", 4, 5};
  return measured;
}

Measurement found(const std::string& route, int of, Vec3 at) {
  Measurement measured = measure(route, of);
  measured.at = at;
  return measured;
}

Measurement found_at(const std::string& route, double distance_in, Vec3 at) {
  Measurement measured = found(route, Measurement::a_distance, at);
  measured.distance_in = distance_in;
  return measured;
}

/// A tube of 60 in along FS, "tube-0", with clamps 20 in and 40 in from its start.
RouteProject straight_tube() {
  RouteProject tubes;
  Route& route =
      tubes.route({{{0, 0, 10}, 0}, {{20, 0, 10}, 0}, {{40, 0, 10}, 0}, {{60, 0, 10}, 0}});
  for (RoutePoint& point : route.points) point.hold = HoldKind::clamp;
  return tubes;
}

std::vector<MeasureFault> take(RouteProject& tubes, std::vector<Measurement> built) {
  tubes.project.built = std::move(built);
  return take_measured(tubes.project);
}

bool says(const MeasureFault& fault, const std::string& words) {
  return fault.words.find(words) != std::string::npos;
}

TEST(AsBuilt, ASupportIsWhereItWasFoundAndItsDrawnPlaceIsKept) {
  RouteProject tubes = straight_tube();
  ASSERT_TRUE(take(tubes, {found("tube-0", 0, {20, 0.5, 10})}).empty());
  const RoutePoint& point = tubes.project.routes[0].points[0];
  EXPECT_EQ(point.at, (Vec3{20, 0.5, 10}));
  EXPECT_EQ(point.drawn_at, (Vec3{20, 0, 10}));
  EXPECT_FALSE(tubes.project.routes[0].points[1].drawn_at);
}

TEST(AsBuilt, AStationAlonePutsTheSupportOnTheDrawnLine) {
  RouteProject tubes;
  // A slope of 3 along FS to 4 along WL: FS 9 is at WL 12.
  Route& route = tubes.route({{{0, 0, 0}, 0}, {{6, 0, 8}, 0}, {{18, 0, 24}, 0}});
  route.points[0].hold = HoldKind::clamp;
  Measurement measured = measure("tube-0", 0);
  measured.fs_in = 9;
  ASSERT_TRUE(take(tubes, {measured}).empty());
  EXPECT_NEAR(distance(tubes.project.routes[0].points[0].at, {9, 0, 12}), 0, rounding_in);
}

TEST(AsBuilt, TheLineIsAsBuiltBetweenPlacesThatWereBothMeasured) {
  RouteProject tubes = straight_tube();
  ASSERT_TRUE(
      take(tubes, {found("tube-0", 0, {20, 0, 10}), found("tube-0", 1, {40, 0, 10})}).empty());
  const PreparedProject prepared = prepare(tubes.project);
  const PreparedRoute& route = prepared.routes[0];
  EXPECT_NEAR(route.as_built_in(), 20, rounding_in);
  EXPECT_TRUE(route.is_as_built(30));
  EXPECT_FALSE(route.is_as_built(10));
  EXPECT_FALSE(route.is_as_built(50));
}

TEST(AsBuilt, OneMeasuredPlaceLeavesTheLineOnBothSidesAsDrawn) {
  RouteProject tubes = straight_tube();
  ASSERT_TRUE(take(tubes, {found("tube-0", 0, {20, 0, 10})}).empty());
  EXPECT_TRUE(prepare(tubes.project).routes[0].as_built.empty());
}

TEST(AsBuilt, ACornerThatWasNotMeasuredLeavesTheLegsBesideItAsDrawn) {
  RouteProject tubes;
  tubes.route({{{0, 0, 0}, 0}, {{20, 0, 0}, 0}, {{20, 20, 0}, 0}});
  ASSERT_TRUE(take(tubes, {found("tube-0", Measurement::from_node, {0, 0, 0}),
                           found("tube-0", Measurement::to_node, {20, 20, 0})})
                  .empty());
  EXPECT_NEAR(prepare(tubes.project).routes[0].as_built_in(), 0, rounding_in);
}

TEST(AsBuilt, AMeasuredNodeMovesTheEndsOfAllItsRoutes) {
  RouteProject tubes = straight_tube();
  tubes.route({60, 0, 10}, {60, 30, 10});
  tubes.project.routes[1].from = tubes.project.routes[0].to;
  ASSERT_TRUE(take(tubes, {found("tube-0", Measurement::to_node, {60, 0, 10.5})}).empty());
  const PreparedProject prepared = prepare(tubes.project);
  EXPECT_EQ(prepared.routes[0].to->at, (Vec3{60, 0, 10.5}));
  EXPECT_EQ(prepared.routes[1].from->at, (Vec3{60, 0, 10.5}));
}

TEST(AsBuilt, ADistanceWithinAnInchOfAPointIsThatPoint) {
  RouteProject tubes = straight_tube();
  ASSERT_TRUE(take(tubes, {found_at("tube-0", 20.9, {20, 0.3, 10})}).empty());
  ASSERT_EQ(tubes.project.routes[0].points.size(), 2u);
  EXPECT_EQ(tubes.project.routes[0].points[0].at, (Vec3{20, 0.3, 10}));
}

// The line begins at the port's face, 0.9 in from the middle of the fitting at the node.
TEST(AsBuilt, ALineMeasuredAtItsEndMovesTheNodeByAsMuchAsTheLineIsOff) {
  RouteProject tubes = straight_tube();
  tubes.project.nodes[0].ports = {{"a", {0.9, 0, 10}, {1, 0, 0}, 0, {}}};
  tubes.project.routes[0].from_port = "a";
  ASSERT_TRUE(take(tubes, {found_at("tube-0", 0.5, {1.4, 0.2, 10})}).empty());
  const Node& node = tubes.project.nodes[0];
  EXPECT_NEAR(distance(node.at, {0, 0.2, 10}), 0, rounding_in);
  EXPECT_NEAR(distance(node.ports[0].at, {0.9, 0.2, 10}), 0, rounding_in);
}

TEST(AsBuilt, ADistanceElsewhereBecomesAPointThatHoldsNothing) {
  RouteProject tubes = straight_tube();
  ASSERT_TRUE(
      take(tubes, {found_at("tube-0", 30, {30, 0.2, 10}), found("tube-0", 1, {40, 0.1, 10})})
          .empty());
  const std::vector<RoutePoint>& points = tubes.project.routes[0].points;
  ASSERT_EQ(points.size(), 3u);
  EXPECT_EQ(points[1].at, (Vec3{30, 0.2, 10}));
  EXPECT_EQ(points[1].drawn_at, (Vec3{30, 0, 10}));
  EXPECT_FALSE(points[1].hold);
  EXPECT_EQ(points[1].where.file, "built.yaml");
  EXPECT_EQ(points[2].at, (Vec3{40, 0.1, 10}));
  EXPECT_EQ(tubes.project.built[1].of, 2) << "it is of the same clamp, one point further on";
}

TEST(AsBuilt, AFairleadThatTheCablePassesFreeStaysWhereItIsAlongTheLine) {
  RouteProject tubes = straight_tube();
  FreeFairlead free;
  free.fairlead.at = {35, 0, 10};
  free.leg = 1;
  tubes.project.routes[0].free_fairleads = {free};
  free.fairlead.at = {25, 0, 10};
  tubes.project.routes[0].free_fairleads.push_back(free);
  ASSERT_TRUE(take(tubes, {found_at("tube-0", 30, {30, 0.2, 10})}).empty());
  EXPECT_EQ(tubes.project.routes[0].free_fairleads[0].leg, 2);
  EXPECT_EQ(tubes.project.routes[0].free_fairleads[1].leg, 1);
}

TEST(AsBuilt, DistancesAsDrawnAreFoundAgainOnTheBuiltLine) {
  RouteProject tubes = straight_tube();
  // The first leg is 30 in long as built, 20 in as drawn.
  ASSERT_TRUE(take(tubes, {found("tube-0", Measurement::from_node, {-10, 0, 10})}).empty());
  const PreparedProject prepared = prepare(tubes.project);
  const PreparedRoute& route = prepared.routes[0];
  EXPECT_NEAR(route.built_distance_in(10), 15, rounding_in);
  EXPECT_NEAR(route.built_distance_in(20), 30, rounding_in);
  EXPECT_NEAR(route.built_distance_in(50), 60, rounding_in);
  EXPECT_NEAR(route.built_distance_in(60), 70, rounding_in);
}

TEST(AsBuilt, TheSamePlaceMeasuredTwiceIsOneMeasure) {
  RouteProject tubes = straight_tube();
  EXPECT_TRUE(
      take(tubes, {found("tube-0", 0, {20, 0, 10}), found("tube-0", 0, {20, 0, 10})}).empty());
}

TEST(AsBuilt, OnePlaceMeasuredTwoWaysIsAFaultThatNamesBoth) {
  RouteProject tubes = straight_tube();
  Measurement second = found_at("tube-0", 20, {20, 0.4, 10});
  second.on = "2026-11-25";
  second.where.line = 9;
  const auto faults = take(tubes, {found("tube-0", 0, {20, 0.1, 10}), second});
  ASSERT_EQ(faults.size(), 1u);
  EXPECT_EQ(faults[0].where.line, 9);
  EXPECT_EQ(faults[0].words,
            "clamp of tube-0 was measured twice: FS 20 BL 0.1 WL 10 on 2026-11-20 at built.yaml:4, "
            "and FS 20 BL 0.4 WL 10 on 2026-11-25 at built.yaml:9");
}

TEST(AsBuilt, ANodeMeasuredTwoWaysFromTwoRoutesIsAFault) {
  RouteProject tubes = straight_tube();
  tubes.route({60, 0, 10}, {60, 30, 10});
  tubes.project.routes[1].from = tubes.project.routes[0].to;
  const auto faults = take(tubes, {found("tube-0", Measurement::to_node, {60, 0, 10.5}),
                                   found("tube-1", Measurement::from_node, {60, 0, 10.2})});
  ASSERT_EQ(faults.size(), 1u);
  EXPECT_TRUE(says(faults[0], "0-to was measured twice")) << faults[0].words;
}

TEST(AsBuilt, OneGapMeasuredTwoWaysIsAFault) {
  RouteProject tubes = straight_tube();
  Measurement gap = measure("tube-0", 0);
  gap.gap_in = 0.3;
  Measurement other = measure("tube-0", Measurement::a_distance);
  other.distance_in = 20;
  other.gap_in = 0.4;
  const auto faults = take(tubes, {gap, other});
  ASSERT_EQ(faults.size(), 1u);
  EXPECT_TRUE(says(faults[0], "one gap of tube-0 was measured twice: 0.3 in")) << faults[0].words;
  other.to = "deck";
  EXPECT_TRUE(take(tubes, {gap, other}).empty()) << "to another part it is another gap";
}

TEST(AsBuilt, ADistancePastTheEndIsOffTheLine) {
  RouteProject tubes = straight_tube();
  EXPECT_TRUE(take(tubes, {found_at("tube-0", 60, {60, 0, 10})}).empty()) << "at its very end";
  tubes = straight_tube();
  const auto faults = take(tubes, {found_at("tube-0", 60.5, {60.5, 0, 10})});
  ASSERT_EQ(faults.size(), 1u);
  EXPECT_EQ(faults[0].words, "60.5 in from 0-from is off the line: tube-0 is 60 in long as drawn");
}

TEST(AsBuilt, CablesAndRodsAreMeasuredAtTheirGuidesAndEnds) {
  for (const SystemKind system : {SystemKind::cable, SystemKind::rod}) {
    RouteProject tubes = straight_tube();
    tubes.project.routes[0].system = system;
    EXPECT_TRUE(take(tubes, {found_at("tube-0", 20.5, {20, 0.1, 10})}).empty());
    const auto faults = take(tubes, {found_at("tube-0", 30, {30, 0.2, 10})});
    ASSERT_EQ(faults.size(), 1u);
    EXPECT_TRUE(says(faults[0], "runs straight from guide to guide")) << faults[0].words;
  }
}

TEST(AsBuilt, AStationThatTheLineNeverHasIsAFault) {
  RouteProject tubes = straight_tube();
  Measurement measured = measure("tube-0", 0);
  measured.fs_in = 61;
  const auto faults = take(tubes, {measured});
  ASSERT_EQ(faults.size(), 1u);
  EXPECT_EQ(faults[0].words, "tube-0 has no FS 61 as drawn");
}

TEST(AsBuilt, TwoPlacesMeasuredToBeOneAreAFault) {
  RouteProject tubes = straight_tube();
  const auto faults = take(tubes, {found("tube-0", 0, {40, 0, 10})});
  ASSERT_EQ(faults.size(), 1u);
  EXPECT_TRUE(says(faults[0], "the line has no length between them")) << faults[0].words;
}

TEST(AsBuilt, AnArmNeedsItsPinOffItsAxis) {
  RouteProject tubes = straight_tube();
  tubes.project.nodes[1].arm = Arm{{60, 0, 12}, {0, 1, 0}};
  const auto faults = take(tubes, {found("tube-0", Measurement::to_node, {60, 1, 12})});
  ASSERT_EQ(faults.size(), 1u);
  EXPECT_TRUE(says(faults[0], "on the axis that its arm turns about")) << faults[0].words;
}

TEST(AsBuilt, NothingIsKnownBetterThanItIsMeasured) {
  RouteProject tubes = straight_tube();
  tubes.project.build_tolerance_in = 0.02;
  tubes.project.measuring_tolerance_in = 0.03;
  ASSERT_TRUE(take(tubes, {found("tube-0", 0, {20, 0, 10})}).empty());
  EXPECT_EQ(tubes.project.build_tolerance_in, 0.03);
  ASSERT_EQ(tubes.project.assumptions.size(), 1u);
  EXPECT_NE(tubes.project.assumptions[0].find("0.03 in was taken for both"), std::string::npos);
}

TEST(AsBuilt, WithoutMeasuresTheBuildToleranceIsTheProjectsOwn) {
  RouteProject tubes = straight_tube();
  tubes.project.build_tolerance_in = 0.02;
  tubes.project.measuring_tolerance_in = 0.03;
  ASSERT_TRUE(take(tubes, {}).empty());
  EXPECT_EQ(tubes.project.build_tolerance_in, 0.02);
}

// The corner of the cable's legs is no place on the aeroplane: the spindle is what can be measured.
TEST(AsBuilt, APulleyIsMeasuredWhereItIsDrawnByItsCentre) {
  RouteProject tubes = straight_tube();
  RoutePoint& pulley = tubes.project.routes[0].points[0];
  pulley.hold = HoldKind::pulley;
  const std::vector<MeasureFault> faults = take(tubes, {found("tube-0", 0, {20, 0.5, 10})});
  ASSERT_EQ(faults.size(), 1u);
  EXPECT_TRUE(says(faults[0], "is drawn by the corner of its cable")) << faults[0].words;
  pulley.given = PointGiven::centre;
  pulley.diameter_in = 2;
  pulley.axis = Vec3{0, 1, 0};
  EXPECT_TRUE(take(tubes, {found("tube-0", 0, {20, 0.1, 10})}).empty());
}

}  // namespace
}  // namespace linewright
