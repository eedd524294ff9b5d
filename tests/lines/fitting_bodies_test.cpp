// Lines begin at the faces of ports, and fittings are bodies among the structure.

#include "lines/fitting_bodies.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "lines/free_run.hpp"
#include "lines/neighbour_filter.hpp"
#include "lines/prepare.hpp"

namespace linewright {
namespace {

/// A tee at the origin with ports 1 in aft, forward and up, body of 0.3 in radius, nuts of 0.2 in.
Node tee() {
  Node node;
  node.name = "tee";
  node.kind = NodeKind::tee;
  node.ports = {{"a", {1, 0, 0}, {1, 0, 0}, 0, {}},
                {"b", {-1, 0, 0}, {-1, 0, 0}, 0, {}},
                {"c", {0, 0, 1}, {0, 0, 1}, 0, {}}};
  node.body = FittingBody{0.3, 0.2};
  return node;
}

Node held(const std::string& name, Vec3 at) {
  Node node;
  node.name = name;
  node.kind = NodeKind::bulkhead;
  node.at = at;
  return node;
}

Route from_tee(const std::string& to, const std::string& port) {
  Route route;
  route.name = "to " + to;
  route.line = "tube";
  route.from = "tee";
  route.from_port = port;
  route.to = to;
  return route;
}

Project branched() {
  Project project;
  Line line;
  line.name = "tube";
  line.outside_diameter_in = 0.25;
  project.catalogue.lines = {line};
  project.nodes = {tee(), held("aft", {11, 0, 0}), held("forward", {-21, 0, 0})};
  project.routes = {from_tee("aft", "a"), from_tee("forward", "b")};
  return project;
}

TEST(FittingBodies, LinesBeginAtTheFaces) {
  const Project project = branched();
  const PreparedProject prepared = prepare(project);
  EXPECT_DOUBLE_EQ(prepared.routes[0].length_in(), 10);
  EXPECT_DOUBLE_EQ(prepared.routes[1].length_in(), 20);
  EXPECT_DOUBLE_EQ(prepared.routes[0].centreline.at(0).x, 1);
  EXPECT_EQ(prepared.routes[0].from_port->name, "a");
  EXPECT_EQ(prepared.routes[0].to_port, nullptr);
}

// 10 in, 20 in, and an inch from either face to the middle of the tee.
TEST(FittingBodies, FreeLengthGoesOnThroughTheFitting) {
  const Project project = branched();
  const PreparedProject prepared = prepare(project);
  const std::vector<FreeRun> runs = free_runs(prepared);
  ASSERT_EQ(runs.size(), 1u);
  EXPECT_DOUBLE_EQ(runs[0].length_in, 32);
}

TEST(FittingBodies, AreLegsOutToTheEndsOfTheirNuts) {
  const Project project = branched();
  const PreparedProject prepared = prepare(project);
  const auto part = prepared.obstacles.find_part("fitting at tee");
  ASSERT_TRUE(part);
  EXPECT_EQ(prepared.fitting_of(*part)->node->name, "tee");
  EXPECT_EQ(prepared.obstacles.of_part(*part).size(), 3u);
  double least = 1e9;
  for (const Obstacle& each : prepared.obstacles.of_part(*part))
    least = std::min(least, nearest(Vec3{0, 0, 2}, each).distance_in);
  EXPECT_NEAR(least, 2 - 1.2 - 0.3, 1e-12);
}

// The nut of 0.2 in, half of 0.6 in, half of the tube and 2 in: to 2.625 in from the face.
TEST(FittingBodies, DoNotCountForTheirOwnLinesWhereTheyJoin) {
  const Project project = branched();
  const PreparedProject prepared = prepare(project);
  const NeighbourFilter filter(prepared, prepared.routes[0]);
  const Obstacle& body =
      prepared.obstacles.of_part(*prepared.obstacles.find_part("fitting at tee")).front();
  EXPECT_FALSE(filter.counts(body, 0));
  EXPECT_FALSE(filter.counts(body, 2.62));
  EXPECT_TRUE(filter.counts(body, 2.63));
  EXPECT_TRUE(filter.counts(body, 10));
  EXPECT_EQ(filter.why_passed_over(body, 0), "the line ends at it");
}

TEST(FittingBodies, ArePartsBeforeThePulleysAndAfterAllElse) {
  Project project = branched();
  Solid box;
  box.name = "box";
  box.shape = Box{{50, 50, 50}, {60, 60, 60}};
  project.structure.solids.push_back(box);
  const PreparedProject prepared = prepare(project);
  EXPECT_EQ(prepared.fitting_of(*prepared.obstacles.find_part("box")), nullptr);
  EXPECT_EQ(prepared.obstacles.parts().back().kind, PartKind::fitting);
}

TEST(FittingBodies, AreNotThereWhereNoSizeIsKnown) {
  Project project = branched();
  project.nodes[0].body.reset();
  const PreparedProject prepared = prepare(project);
  EXPECT_TRUE(prepared.fittings.empty());
  // The ports still say where the lines begin.
  EXPECT_DOUBLE_EQ(prepared.routes[0].length_in(), 10);
}

}  // namespace
}  // namespace linewright
