// Fittings and ports of nodes as they are read, and which port a route takes.

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>

#include "catalogue/catalogue.hpp"
#include "input/load_project.hpp"
#include "input/project_folder.hpp"

namespace linewright {
namespace {

/// Tubes to aft, forward and up of `middle`, a node at FS 100.
LoadResult loaded(const std::string& middle, const std::string& routes,
                  const std::string& rest = {}) {
  const ProjectFolder folder;
  folder.write("project.yaml", "linewright: 1\nname: t\nunits: in\n" + rest +
                                   "nodes:\n  - {name: aft, kind: instrument, at: [130, 0, 0]}\n"
                                   "  - {name: forward, kind: static-port, at: [70, 0, 0]}\n"
                                   "  - {name: above, kind: instrument, at: [100, 0, 30]}\n  - " +
                                   middle + "\nroutes:\n" + routes);
  return load_project(folder.path() / "project.yaml", built_in_catalogue());
}

std::string route(const std::string& name, const std::string& more = {},
                  const std::string& line = "tube-aluminium-1/4") {
  return "  - {name: to-" + name + ", system: static, line: " + line + ", from: m, to: " + name +
         more + "}\n";
}

const std::string three = route("aft") + route("forward") + route("above");
const std::string tee =
    "{name: m, kind: tee, at: [100, 0, 0], fitting: tee-1/4, direction: [2, 0, 0], branch: [0, 0, "
    "1]}";

std::string errors_of(const LoadResult& result) {
  return shown(result.errors);
}

bool says(const LoadResult& result, const std::string& words) {
  return errors_of(result).find(words) != std::string::npos;
}

TEST(NodePorts, OfAFittingStandAtItsTakeUpTheWayItIsTurned) {
  const LoadResult result = loaded(tee, three);
  ASSERT_EQ(errors_of(result), "");
  const Node& node = *result.project->find_node("m");
  ASSERT_EQ(node.ports.size(), 3u);
  // AN824 of 1/4 in, centre to end 0.89 in [from memory].
  EXPECT_NEAR(node.find_port("a")->at.x, 100.89, 1e-12);
  EXPECT_NEAR(node.find_port("b")->at.x, 99.11, 1e-12);
  EXPECT_NEAR(node.find_port("c")->at.z, 0.89, 1e-12);
  EXPECT_NEAR(node.find_port("c")->direction.z, 1, 1e-12);
  EXPECT_NEAR(node.body->radius_in, 0.649 / 2, 1e-12);
  EXPECT_NEAR(node.body->beyond_face_in, 0.25, 1e-12);
}

TEST(NodePorts, OfAnElbowOf45DegreesPoint135DegreesApart) {
  const LoadResult result = loaded(
      "{name: m, kind: union, at: [100, 0, 0], fitting: elbow-45-1/4, direction: [1, 0, 0], "
      "branch: [-1, 0, 1]}",
      route("aft") + route("above"));
  // Neither port points at `above`: the other is left for it.
  ASSERT_EQ(errors_of(result),
            "project.yaml:11:70: no free port of 'm' points the way that 'to-above' goes | say "
            "which by 'from_port'; ports of m: a, b\n");
  const LoadResult named = loaded(
      "{name: m, kind: union, at: [100, 0, 0], fitting: elbow-45-1/4, direction: [1, 0, 0], "
      "branch: [-1, 0, 1]}",
      route("aft") + route("above", ", from_port: b"));
  ASSERT_EQ(errors_of(named), "");
  const Vec3 way = named.project->find_node("m")->find_port("b")->direction;
  EXPECT_NEAR(way.x, -std::numbers::sqrt2 / 2, 1e-12);
  EXPECT_NEAR(way.z, std::numbers::sqrt2 / 2, 1e-12);
}

// A branch read off a protractor is put at the fitting's own angle, in the plane that it spans.
TEST(NodePorts, StandAtTheFittingsOwnAngle) {
  const LoadResult result = loaded(
      "{name: m, kind: tee, at: [100, 0, 0], fitting: tee-1/4, direction: [1, 0, 0], "
      "branch: [0.05, 0, 1]}",
      three);
  ASSERT_EQ(errors_of(result), "");
  EXPECT_NEAR(result.project->find_node("m")->find_port("c")->direction.x, 0, 1e-12);
}

TEST(NodePorts, AreTakenByTheRoutesThatGoTheirWay) {
  const LoadResult result = loaded(tee, three);
  ASSERT_EQ(errors_of(result), "");
  EXPECT_EQ(result.project->routes[0].from_port, "a");
  EXPECT_EQ(result.project->routes[1].from_port, "b");
  EXPECT_EQ(result.project->routes[2].from_port, "c");
}

TEST(NodePorts, AreTakenWhereTheyAreNamed) {
  const LoadResult result = loaded(
      tee, route("aft", ", from_port: c") + route("forward") + route("above", ", from_port: a"));
  ASSERT_EQ(errors_of(result), "");
  EXPECT_EQ(result.project->routes[0].from_port, "c");
  EXPECT_EQ(result.project->routes[1].from_port, "b");
  EXPECT_EQ(result.project->routes[2].from_port, "a");
}

// The only port that is left is the only route's, wherever it points: `bend-fit` has its angle.
TEST(NodePorts, TheLastOneIsTakenByTheLastRoute) {
  const LoadResult result = loaded(
      tee, route("aft", ", from_port: b") + route("forward", ", from_port: c") + route("above"));
  ASSERT_EQ(errors_of(result), "");
  EXPECT_EQ(result.project->routes[2].from_port, "a");
}

TEST(NodePorts, StatedOneByOneTakeTheirNames) {
  const LoadResult result = loaded(
      "{name: m, kind: instrument, at: [100, 0, 0], ports: {static: {at: [101, 0, 0], direction: "
      "[3, 0, 0], insertion: 0.5}, pitot: {at: [100, 0, 1], direction: [0, 0, 1]}}, "
      "body_diameter: 0.6}",
      route("aft") + route("above", ", from_port: pitot"));
  ASSERT_EQ(errors_of(result), "");
  const Node& node = *result.project->find_node("m");
  EXPECT_EQ(result.project->routes[0].from_port, "static");
  EXPECT_NEAR(node.find_port("static")->direction.x, 1, 1e-12);
  EXPECT_NEAR(node.find_port("static")->insertion_in, 0.5, 1e-12);
  EXPECT_NEAR(node.body->radius_in, 0.3, 1e-12);
  EXPECT_FALSE(node.volume_in3);
}

// Two bores of 0.172 in, 0.89 in long each way from the middle.
TEST(NodePorts, GiveTheNodeTheVolumeOfTheFittingsBores) {
  const std::string elbow =
      "{name: m, kind: union, at: [100, 0, 0], fitting: elbow-1/4, direction: [1, 0, 0], branch: "
      "[0, 0, 1]VOLUME}";
  const auto with = [&](const std::string& volume) {
    std::string node = elbow;
    node.replace(node.find("VOLUME"), 6, volume);
    return *loaded(node, route("aft") + route("above")).project->find_node("m")->volume_in3;
  };
  EXPECT_NEAR(with(""), std::numbers::pi / 4 * 0.172 * 0.172 * 1.78, 1e-12);
  EXPECT_NEAR(with(", volume: 0.5 in3"), 0.5, 1e-12);
}

TEST(NodePorts, OfAProjectsOwnFittingFollowItsFigures) {
  const LoadResult result = loaded(
      "{name: m, kind: union, at: [100, 0, 0], fitting: push, direction: [1, 0, 0], branch: "
      "[0, 0, 1]}",
      route("aft", "", "tube-nylon-1/4") + route("above", "", "tube-nylon-1/4"),
      "fittings: [{name: push, kind: elbow-90, tube: 0.25, take_up: [0.7], body_diameter: "
      "0.5, insertion: 0.6, source: measured}]\n");
  ASSERT_EQ(errors_of(result), "");
  EXPECT_NEAR(result.project->find_node("m")->find_port("b")->at.z, 0.7, 1e-12);
  EXPECT_NEAR(result.project->find_node("m")->find_port("b")->insertion_in, 0.6, 1e-12);
  EXPECT_EQ(result.project->catalogue.find_fitting("push")->body_diameter_in.source.mark,
            Mark::builder);
}

// Faces 0.5 in from the middle: a tube goes in so far, and no farther.
TEST(NodePorts, OfAJointTakeNoTubePastItsMiddle) {
  const auto joint = [](const std::string& kind, const std::string& aft,
                        const std::string& forward) {
    return loaded(
        "{name: m, kind: " + kind +
            ", at: [100, 0, 0], ports: {a: {at: [100.5, 0, 0], direction: [1, 0, 0], "
            "insertion: " +
            aft + "}, b: {at: [99.5, 0, 0], direction: [-1, 0, 0], insertion: " + forward + "}}}",
        route("aft") + route("forward"));
  };
  EXPECT_EQ(errors_of(joint("union", "0.5", "0.5")), "");
  EXPECT_TRUE(
      says(joint("union", "0.6", "0"),
           "the tube at port 'a' would go past the middle of 'm', where tubes meet: it goes "
           "in 0.6 in, and from the face to there it is 0.5 in"));
  EXPECT_TRUE(says(joint("bulkhead", "0", "0.51"), "the tube at port 'b'"));
  // In a valve or an instrument it is only known that two tubes are not in one place.
  EXPECT_EQ(errors_of(joint("valve", "0.7", "0.3")), "");
  EXPECT_TRUE(says(joint("valve", "0.7", "0.31"),
                   "the tubes at ports 'a' and 'b' of 'm' would meet: they go in 1.01 in together, "
                   "and from face to face it is 1 in"));
}

TEST(NodePorts, OnlyABulkheadHasAThread) {
  const auto fitting = [](const std::string& kind) {
    return loaded("{name: m, kind: union, at: [100, 0, 0], fitting: mine, direction: [1, 0, 0]}",
                  route("aft", "", "tube-nylon-1/4") + route("forward", "", "tube-nylon-1/4"),
                  "fittings: [{name: mine, kind: " + kind +
                      ", tube: 0.25, take_up: [0.7], body_diameter: 0.6, thread: 7/16, source: "
                      "measured}]\n");
  };
  const LoadResult through = fitting("bulkhead");
  ASSERT_EQ(errors_of(through), "");
  EXPECT_NEAR(through.project->catalogue.find_fitting("mine")->thread_in->value, 0.4375, 1e-12);
  EXPECT_TRUE(says(fitting("union"), "thread"));
}

TEST(NodePorts, GoAlongWithAMirroredNode) {
  const LoadResult result = loaded(
      "{name: m, kind: tee, at: [100, -5, 0], ports: {up: {at: [100, -5, 1], direction: [0, -0.1, "
      "1]}}, mirror: m-right}",
      "  - {name: left, system: static, line: tube-nylon-1/4, from: m, to: above, mirror: "
      "right}\n");
  ASSERT_EQ(errors_of(result), "");
  const Port& port = result.project->find_node("m-right")->ports.at(0);
  EXPECT_NEAR(port.at.y, 5, 1e-12);
  EXPECT_GT(port.direction.y, 0);
}

TEST(NodePorts, ErrorsNameThePortsThereAre) {
  EXPECT_TRUE(says(loaded(tee, route("aft", ", from_port: d")),
                   "node 'm' has no port 'd' | ports of m: a, b, c"));
  EXPECT_TRUE(says(loaded(tee, route("aft", ", from_port: a") + route("above", ", from_port: a")),
                   "port a of 'm' is taken: 'to-aft' is on it"));
  EXPECT_TRUE(says(loaded(tee, route("aft", ", to_port: a")), "node 'aft' has no ports"));
  const std::string side_by_side =
      "{name: m, kind: instrument, at: [100, 0, 0], ports: {s: {at: [101, 0, 0], direction: [1, 0, "
      "0]}, p: {at: [101, 1, 0], direction: [1, 0, 0]}}}";
  EXPECT_TRUE(says(loaded(side_by_side, route("aft")),
                   "more than one free port of 'm' points the way that 'to-aft' goes | say which "
                   "by 'from_port'; ports of m: s, p"));
  const std::string straight =
      "{name: m, kind: union, at: [100, 0, 0], fitting: union-1/4, direction: [1, 0, 0]}";
  EXPECT_TRUE(says(loaded(straight, route("aft", ", from_port: a") +
                                        route("forward", ", from_port: b") + route("above")),
                   "no port of 'm' is left for 'to-above' | ports of m: a, b"));
}

TEST(NodePorts, ErrorsSayHowAFittingIsTurned) {
  EXPECT_TRUE(says(loaded("{name: m, kind: tee, at: [100, 0, 0], fitting: tee-1/4}", three),
                   "a node with a fitting needs 'direction', the way its port a points"));
  EXPECT_TRUE(says(loaded("{name: m, kind: tee, at: [100, 0, 0], fitting: tee-1/4, direction: [1, "
                          "0, 0]}",
                          three),
                   "'tee-1/4' needs 'branch', the way its port c points"));
  EXPECT_TRUE(says(loaded("{name: m, kind: tee, at: [100, 0, 0], fitting: tee-1/4, direction: [1, "
                          "0, 0], branch: [1, 0, 1]}",
                          three),
                   "port c of 'tee-1/4' points 90 degrees off the way of port a: 'branch' is 45.0 "
                   "degrees off 'direction'"));
  EXPECT_TRUE(says(loaded("{name: m, kind: union, at: [100, 0, 0], fitting: union-1/4, direction: "
                          "[1, 0, 0], branch: [0, 0, 1]}",
                          route("aft")),
                   "'union-1/4' runs straight: it has no 'branch'"));
  EXPECT_TRUE(says(loaded("{name: m, kind: tee, at: [100, 0, 0], direction: [1, 0, 0]}", three),
                   "a node with a fitting"));
  EXPECT_TRUE(says(loaded("{name: m, kind: tee, at: [100, 0, 0], body_diameter: 1}", three),
                   "a node with ports"));
  EXPECT_TRUE(says(loaded("{name: m, kind: tee, at: [100, 0, 0], fitting: tee-1/4, direction: [1, "
                          "0, 0], branch: [0, 0, 1], ports: {a: {at: [101, 0, 0], direction: [1, "
                          "0, 0]}}}",
                          three),
                   "the node's 'fitting' says where its ports are: leave one of them out"));
  EXPECT_TRUE(says(loaded("{name: m, kind: tee, at: [100, 0, 0], ports: []}", three),
                   "ports must be a map of ports, each under its name"));
  EXPECT_TRUE(says(loaded("{name: m, kind: tee, at: [100, 0, 0], fitting: tee-1/5, direction: [1, "
                          "0, 0], branch: [0, 0, 1]}",
                          three),
                   "there is no fitting 'tee-1/5'"));
}

TEST(NodePorts, AreForTubesThatFitAndForHoses) {
  EXPECT_TRUE(says(loaded(tee, route("aft", "", "tube-aluminium-3/8")),
                   "'tee-1/4' at 'm' takes tube of 0.25 in, and 'tube-aluminium-3/8' is of 0.375 "
                   "in"));
  EXPECT_EQ(errors_of(loaded(tee, route("aft", "", "hose-rubber-1/4"))), "");
  EXPECT_TRUE(says(loaded(tee, "  - {name: w, system: wire, line: wire-1/4, from: m, to: aft}\n"),
                   "the ports of 'm' are for tubes and hoses: 'w' is neither"));
  EXPECT_TRUE(says(loaded(tee,
                          "  - {name: w, system: wire, line: wire-1/4, from: forward, to: "
                          "aft, from_port: a}\n"),
                   "a route of a tube or a hose"));
}

TEST(NodePorts, NoPointCanStandOnAFace) {
  EXPECT_TRUE(says(loaded(tee, route("aft", ", points: [{at: [100.89, 0, 0]}]") + route("forward") +
                                   route("above")),
                   "this point is at the same place as node 'm'"));
}

TEST(ProjectFitting, SaysWhatItNeeds) {
  const auto with = [&](const std::string& fitting) {
    return loaded(tee, three, "fittings: [" + fitting + "]\n");
  };
  EXPECT_TRUE(says(with("{name: f, kind: tee, tube: 0.25, take_up: [1, 1], body_diameter: 0.5, "
                        "source: s}"),
                   "take_up: must be one length for all 3 ports, or one for each, found 2"));
  EXPECT_TRUE(
      says(with("{name: f, kind: tee, tube: 0.25, take_up: [1], source: s}"), "body_diameter"));
  EXPECT_TRUE(says(with("{name: tee-1/4, kind: tee, tube: 0.25, take_up: [1], body_diameter: 0.5, "
                        "source: s}"),
                   "the fitting 'tee-1/4' is in the built-in catalogue already"));
  EXPECT_TRUE(says(with("{name: f, kind: cross, tube: 0.25, take_up: [1], body_diameter: 0.5, "
                        "source: s}"),
                   "elbow-45"));
  EXPECT_TRUE(
      says(with("{name: f, kind: tee, tube: 0.25, take_up: [1], body_diameter: 0.5}"), "source"));
}

}  // namespace
}  // namespace linewright
