#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include "lines/prepare.hpp"
#include "lines/route_project.hpp"
#include "oracles/random_path.hpp"

namespace linewright {
namespace {

// Distances along routes of tens of inches.
constexpr double rounding_in = 1e-9;

RoutePoint held_at(Vec3 at, HoldKind hold) {
  RoutePoint point;
  point.at = at;
  point.hold = hold;
  return point;
}

RoutePoint through_hole(Vec3 at, const std::string& hole) {
  RoutePoint point;
  point.at = at;
  point.through = hole;
  return point;
}

/// A straight of 30 in along FS that passes one point.
RouteProject passing(const RoutePoint& point) {
  RouteProject drawn;
  drawn.route({0, 0, 0}, {30, 0, 0}).points.push_back(point);
  return drawn;
}

/// Its middle support; the two ends are held as well.
Support middle_support(const RouteProject& drawn) {
  const PreparedProject prepared = drawn.prepared();
  const auto& supports = prepared.routes.at(0).supports;
  EXPECT_EQ(supports.size(), 3u);
  return supports.size() == 3 ? supports[1] : Support{};
}

TEST(Supports, AreBothEndsThatStructureHolds) {
  RouteProject drawn;
  drawn.route({0, 0, 0}, {3, 4, 0});
  const PreparedProject prepared = drawn.prepared();
  const auto& supports = prepared.routes.at(0).supports;
  ASSERT_EQ(supports.size(), 2u);
  EXPECT_EQ(supports[0].distance_in, 0);
  EXPECT_EQ(supports[0].name, "0-from");
  EXPECT_EQ(supports[0].point, -1);
  EXPECT_NEAR(supports[1].distance_in, 5, rounding_in);
  EXPECT_EQ(supports[1].name, "0-to");
  EXPECT_EQ(supports[1].point, -2);
  EXPECT_EQ(supports[1].play_in, 0);
}

TEST(Supports, AreNotTheNodesThatHangOnTheirLines) {
  for (const NodeKind kind :
       {NodeKind::tee, NodeKind::union_fitting, NodeKind::cap, NodeKind::end}) {
    RouteProject drawn;
    drawn.route({0, 0, 0}, {10, 0, 0});
    drawn.project.nodes[0].kind = kind;
    EXPECT_EQ(drawn.prepared().routes.at(0).supports.size(), 1u);
    drawn.project.nodes[0].fixed = true;
    EXPECT_EQ(drawn.prepared().routes.at(0).supports.size(), 2u);
  }
}

TEST(Supports, AreHeldNodesNoLongerOnceTheBuilderSaysSo) {
  RouteProject drawn;
  drawn.route({0, 0, 0}, {10, 0, 0});
  drawn.project.nodes[1].fixed = false;
  EXPECT_EQ(drawn.prepared().routes.at(0).supports.size(), 1u);
}

TEST(Supports, AreClampsWithALittlePlay) {
  RoutePoint clamp = held_at({12, 0, 0}, HoldKind::clamp);
  clamp.to = "stringer";
  const Support support = middle_support(passing(clamp));
  EXPECT_NEAR(support.distance_in, 12, rounding_in);
  EXPECT_EQ(support.play_in, 0.02);
  EXPECT_EQ(support.name, "clamp on stringer");
  EXPECT_EQ(support.to, "stringer");
  EXPECT_EQ(support.point, 0);
}

TEST(Supports, HoldACableInThePulleysGroove) {
  EXPECT_EQ(middle_support(passing(held_at({12, 0, 0}, HoldKind::pulley))).play_in, 0);
}

TEST(Supports, LeaveHalfOfWhatTheBoreHasOverTheLine) {
  RoutePoint fairlead = held_at({12, 0, 0}, HoldKind::fairlead);
  fairlead.bore_in = 0.31;
  EXPECT_NEAR(middle_support(passing(fairlead)).play_in, 0.03, rounding_in);
  fairlead.bore_in = 0.2;  // tighter than the line
  EXPECT_EQ(middle_support(passing(fairlead)).play_in, 0);
  fairlead.bore_in.reset();
  EXPECT_EQ(middle_support(passing(fairlead)).play_in, 1.0 / 32);
}

TEST(Supports, TakeTheBoreFromTheHoleWhereThePointStatesNone) {
  RoutePoint grommet = held_at({12, 0, 0}, HoldKind::grommet);
  grommet.through = "hole";
  RouteProject drawn = passing(grommet);
  Hole hole = round_hole("hole", {}, 0.75, EdgeGuard::grommet);
  hole.bore_in = 0.35;
  drawn.frame(12, 0.032, {hole});
  const Support support = middle_support(drawn);
  EXPECT_NEAR(support.play_in, 0.05, rounding_in);
  EXPECT_EQ(support.name, "grommet in hole");
}

TEST(Supports, AreGrommetsAndBushingsThatTheLineNearlyFills) {
  // Holes are 1/4 in larger than a grommet's bore and 1/8 in than a bushing's: bores of 0.5 and
  // 0.5625 in for a 1/4 in line, whose limit is twice 1/4.
  RouteProject grommet = passing(through_hole({12, 0, 0}, "hole"));
  grommet.frame(12, 0.032, {round_hole("hole", {}, 0.75, EdgeGuard::grommet)});
  const Support support = middle_support(grommet);
  EXPECT_EQ(support.name, "grommet hole");
  EXPECT_NEAR(support.play_in, 0.125, rounding_in);

  RouteProject bushing = passing(through_hole({12, 0, 0}, "hole"));
  bushing.frame(12, 0.032, {round_hole("hole", {}, 0.625, EdgeGuard::bushing)});
  EXPECT_EQ(middle_support(bushing).name, "bushing hole");
}

TEST(Supports, AreNotGrommetsTooWideToHoldTheLine) {
  for (const auto& [edge, diameter] :
       {std::pair{EdgeGuard::grommet, 0.751}, std::pair{EdgeGuard::bushing, 0.626}}) {
    RouteProject drawn = passing(through_hole({12, 0, 0}, "hole"));
    drawn.frame(12, 0.032, {round_hole("hole", {}, diameter, edge)});
    EXPECT_EQ(drawn.prepared().routes.at(0).supports.size(), 2u) << diameter;
  }
}

TEST(Supports, AreNotHolesWithEdgeTrimOrNone) {
  for (const EdgeGuard edge : {EdgeGuard::bare, EdgeGuard::rolled, EdgeGuard::edge_trim}) {
    RouteProject drawn = passing(through_hole({12, 0, 0}, "hole"));
    drawn.frame(12, 0.032, {round_hole("hole", {}, 0.5, edge)});
    EXPECT_EQ(drawn.prepared().routes.at(0).supports.size(), 2u);
  }
}

TEST(Supports, AreNoOutlinedHolesWhoseBoreIsNotStated) {
  RouteProject drawn = passing(through_hole({12, 0, 0}, "hole"));
  const std::vector<Vec2> square{{-0.2, -0.2}, {0.2, -0.2}, {0.2, 0.2}, {-0.2, 0.2}};
  drawn.frame(12, 0.032, {Hole{"hole", square, EdgeGuard::grommet, {}, {}}});
  EXPECT_EQ(drawn.prepared().routes.at(0).supports.size(), 2u);
  drawn.project.structure.frames[0].holes[0].bore_in = 0.3;
  EXPECT_EQ(drawn.prepared().routes.at(0).supports.size(), 3u);
}

TEST(Spans, GoFromSupportToSupport) {
  const PreparedProject prepared = passing(held_at({12, 0, 0}, HoldKind::clamp)).prepared();
  const auto& spans = prepared.routes.at(0).spans;
  ASSERT_EQ(spans.size(), 2u);
  EXPECT_NEAR(spans[0].length_in(), 12, rounding_in);
  EXPECT_EQ(spans[0].first, 0);
  EXPECT_EQ(spans[0].last, 1);
  EXPECT_NEAR(spans[1].length_in(), 18, rounding_in);
}

TEST(Spans, EndAtMinusOneWhereNothingHolds) {
  RouteProject drawn = passing(held_at({12, 0, 0}, HoldKind::clamp));
  drawn.project.nodes[0].kind = NodeKind::tee;
  drawn.project.nodes[1].kind = NodeKind::end;
  const PreparedProject prepared = drawn.prepared();
  const auto& spans = prepared.routes.at(0).spans;
  ASSERT_EQ(spans.size(), 2u);
  EXPECT_EQ(spans[0].first, -1);
  EXPECT_EQ(spans[0].last, 0);
  EXPECT_EQ(spans[1].first, 0);
  EXPECT_EQ(spans[1].last, -1);
}

TEST(Spans, AreTheWholeLineWhereNothingHoldsIt) {
  RouteProject drawn;
  drawn.route({0, 0, 0}, {10, 0, 0});
  drawn.project.nodes[0].kind = NodeKind::end;
  drawn.project.nodes[1].kind = NodeKind::end;
  const PreparedProject prepared = drawn.prepared();
  const auto& spans = prepared.routes.at(0).spans;
  ASSERT_EQ(spans.size(), 1u);
  EXPECT_EQ(spans[0].first, -1);
  EXPECT_EQ(spans[0].last, -1);
  EXPECT_NEAR(spans[0].length_in(), 10, rounding_in);
}

TEST(Spans, CoverEveryRouteFromEndToEnd) {
  oracles::Random random(4);
  for (int round = 0; round < 100; ++round) {
    RouteProject drawn;
    Route& route = drawn.route(oracles::fitting_path(random, random.whole(2, 8)));
    for (RoutePoint& point : route.points)
      if (random.whole(0, 1) == 0) point.hold = HoldKind::clamp;
    for (Node& node : drawn.project.nodes) node.fixed = random.whole(0, 1) == 0;
    const PreparedProject prepared = drawn.prepared();
    const PreparedRoute& ready = prepared.routes.at(0);
    double reached = 0;
    for (const Span& span : ready.spans) {
      EXPECT_NEAR(span.start_in, reached, rounding_in);
      EXPECT_GT(span.length_in(), 0);
      reached = span.end_in;
    }
    EXPECT_NEAR(reached, ready.length_in(), rounding_in);
  }
}

TEST(PreparedRoute, PlacesAPointInTheMiddleOfItsArc) {
  // Legs of 10 less tangents of 2, and half of a quarter circle of 2 in radius.
  RouteProject drawn;
  drawn.route({{{0, 0, 0}, 0}, {{10, 0, 0}, 2}, {{10, 10, 0}, 0}});
  const PreparedProject prepared = drawn.prepared();
  EXPECT_NEAR(prepared.routes.at(0).point_distance_in.at(0), 8 + std::numbers::pi / 2, rounding_in);
  EXPECT_NEAR(prepared.routes.at(0).length_in(), 16 + std::numbers::pi, rounding_in);
}

TEST(PreparedRoute, PointsAtTheNearestPointOrAtTheRouteNearAnEnd) {
  RouteProject drawn = passing(held_at({10, 0, 0}, HoldKind::clamp));
  Route& route = drawn.project.routes[0];
  route.points.push_back(held_at({20, 0, 0}, HoldKind::clamp));
  route.where = {"routes.yaml", 5, 3};
  route.points[0].where = {"routes.yaml", 9, 7};
  route.points[1].where = {"routes.yaml", 10, 7};
  const PreparedProject prepared = drawn.prepared();
  const PreparedRoute& ready = prepared.routes.at(0);
  EXPECT_EQ(ready.location_near(4.9).line, 5);
  EXPECT_EQ(ready.location_near(5.1).line, 9);
  EXPECT_EQ(ready.location_near(14.9).line, 9);
  EXPECT_EQ(ready.location_near(15.1).line, 10);
  EXPECT_EQ(ready.location_near(24.9).line, 10);
  EXPECT_EQ(ready.location_near(25.1).line, 5);
}

/// Clamps at 8 and 14, and a frame at 11 that the line passes by a hole.
RouteProject by_a_hole_between_clamps() {
  RouteProject drawn = passing(held_at({8, 0, 0}, HoldKind::clamp));
  drawn.project.routes[0].points.push_back(held_at({14, 0, 0}, HoldKind::clamp));
  Hole hole;
  hole.name = "F-a";
  hole.shape = Circle{{0, 0}, 2};
  Frame frame;
  frame.name = "F";
  frame.plane = at_station(11);
  frame.outline = {{-5, -5}, {5, -5}, {5, 5}, {-5, 5}};
  frame.holes = {hole};
  drawn.project.structure.frames = {frame};
  Route& route = drawn.project.routes[0];
  route.points[0].where = {"routes.yaml", 9, 7};
  route.points[1].where = {"routes.yaml", 10, 7};
  return drawn;
}

TEST(PreparedRoute, PointsAtAHoleToThePointThatNamesItNotToItsNeighbour) {
  RouteProject drawn = by_a_hole_between_clamps();
  EXPECT_EQ(drawn.prepared().routes.at(0).location_near(11).line, 10);
  // The point that names the hole is farther from it than the clamp after it.
  RoutePoint named = held_at({7, 0, 0}, HoldKind::clamp);
  named.through = "F-a";
  named.where = {"routes.yaml", 8, 7};
  auto& points = drawn.project.routes[0].points;
  points.insert(points.begin(), named);
  const PreparedProject prepared = drawn.prepared();
  EXPECT_EQ(prepared.routes.at(0).location_near(11).line, 8);
  EXPECT_EQ(prepared.routes.at(0).location_near(10.9).line, 8);
  EXPECT_EQ(prepared.routes.at(0).location_near(14).line, 10);
}

TEST(PreparedRoute, PointsToAFairleadThatItPassesFree) {
  RouteProject drawn = by_a_hole_between_clamps();
  FreeFairlead free;
  free.fairlead = held_at({11, 0.1, 0}, HoldKind::fairlead);
  free.fairlead.through = "F-a";
  free.fairlead.bore_in = 0.5;
  free.fairlead.where = {"routes.yaml", 12, 7};
  free.leg = 1;
  drawn.project.routes[0].free_fairleads = {free};
  EXPECT_EQ(drawn.prepared().routes.at(0).location_near(11.01).line, 12);
}

TEST(PreparedRoute, KnowsHowFarTheNearestSupportIs) {
  const PreparedProject prepared = passing(held_at({12, 0, 0}, HoldKind::clamp)).prepared();
  const PreparedRoute& route = prepared.routes.at(0);
  EXPECT_NEAR(route.to_nearest_support_in(0), 0, rounding_in);
  EXPECT_NEAR(route.to_nearest_support_in(5), 5, rounding_in);
  EXPECT_NEAR(route.to_nearest_support_in(11), 1, rounding_in);
  EXPECT_NEAR(route.to_nearest_support_in(22), 8, rounding_in);
}

TEST(PreparedRoute, IsTheWholeLengthFromASupportWhereThereIsNone) {
  RouteProject drawn;
  drawn.route({0, 0, 0}, {10, 0, 0});
  for (Node& node : drawn.project.nodes) node.fixed = false;
  EXPECT_NEAR(drawn.prepared().routes.at(0).to_nearest_support_in(5), 10, rounding_in);
}

TEST(PreparedRoute, IsAsThickAsItsSleeveWhereItHasOne) {
  RouteProject drawn;
  drawn.project.catalogue.lines[0].plus_tolerance_in = 0.01;
  Route& route = drawn.route({0, 0, 0}, {30, 0, 0});
  route.sleeves = {{10, 20, 0.3, 0.4, {}}, {24, 26, {}, {}, {}}};
  const PreparedProject prepared = drawn.prepared();
  const PreparedRoute& ready = prepared.routes.at(0);
  EXPECT_EQ(ready.sleeve_at(9.99), nullptr);
  EXPECT_EQ(ready.sleeve_at(10), &drawn.project.routes[0].sleeves[0]);
  EXPECT_EQ(ready.sleeve_at(20), &drawn.project.routes[0].sleeves[0]);
  EXPECT_EQ(ready.sleeve_at(20.01), nullptr);
  EXPECT_NEAR(ready.radius_in(5), 0.13, rounding_in);
  EXPECT_NEAR(ready.radius_in(15), 0.2, rounding_in);
  EXPECT_NEAR(ready.radius_in(25), 0.13, rounding_in);
  EXPECT_NEAR(ready.thickest_radius_in(), 0.2, rounding_in);
}

TEST(PreparedProject, FindsARouteByItsName) {
  RouteProject drawn;
  drawn.route({0, 0, 0}, {10, 0, 0});
  drawn.route({0, 5, 0}, {10, 5, 0});
  const PreparedProject prepared = drawn.prepared();
  EXPECT_EQ(prepared.find_route("tube-1"), &prepared.routes[1]);
  EXPECT_EQ(prepared.find_route("tube-2"), nullptr);
}

TEST(DrawnRadius, IsThePointsOwnThenThePulleysThenTheLinesUsual) {
  Line line;
  line.kind = LineKind::plastic_tube;
  line.usual_bend_radius_in = 1.25;
  RoutePoint point;
  EXPECT_EQ(drawn_radius_in(point, line), 1.25);
  point.hold = HoldKind::pulley;
  point.diameter_in = 3;
  EXPECT_EQ(drawn_radius_in(point, line), 1.5);
  point.bend_in = 0.75;
  EXPECT_EQ(drawn_radius_in(point, line), 0.75);
}

TEST(DrawnRadius, IsNothingForACableThatNoPulleyTurns) {
  Line line;
  line.kind = LineKind::cable;
  line.usual_bend_radius_in = 1.25;
  EXPECT_EQ(drawn_radius_in(RoutePoint{}, line), 0);
}

}  // namespace
}  // namespace linewright
