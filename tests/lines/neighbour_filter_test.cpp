#include "lines/neighbour_filter.hpp"

#include <gtest/gtest.h>

#include <stdexcept>
#include <string>
#include <tuple>

#include "lines/edge_guard.hpp"
#include "rules/project_text.hpp"

namespace linewright {
namespace {

/// A line along FS from 100 to 130 at BL 0, WL 10 past the structure given.
ProjectText past(const std::string& structure, const std::string& points = "[]",
                 const std::string& kind = "bulkhead", const std::string& more = "") {
  ProjectSections sections;
  sections.structure = structure;
  sections.nodes = "  - {name: forward, kind: " + kind + ", at: [100, 0, 10]}\n" +
                   held_node("aft", "130, 0, 10");
  sections.routes =
      "  - {name: route, system: cable, line: cable-7x19-1/8-steel, from: forward, to: aft,\n"
      "     points: " +
      points + more + "}\n";
  return ProjectText(sections);
}

NeighbourFilter filter_of(const ProjectText& project) {
  return {project.prepared(), project.route("route")};
}

/// Any obstacle of the part.
const Obstacle& of_part(const ProjectText& project, const std::string& name) {
  const Obstacles& obstacles = project.prepared().obstacles;
  for (const Obstacle& obstacle : obstacles.all())
    if (obstacle.part == obstacles.find_part(name)) return obstacle;
  throw std::runtime_error("no part " + name);
}

std::string rod_at(const std::string& station) {
  return "  solids:\n    - {name: rod, cylinder: {from: [" + station + ", 0, 0], to: [" + station +
         ", 0, 20], diameter: 1}}\n";
}

// Half an inch for a mounting and an inch for its fitting [common practice, no source].
TEST(NeighbourFilter, LeavesOutWhatAnEndIsMountedOnForAnInch) {
  // The rod's surface is half an inch and a bit less from the node.
  const ProjectText project = past(rod_at("99.01"));
  const NeighbourFilter filter = filter_of(project);
  const Obstacle& rod = of_part(project, "rod");
  EXPECT_FALSE(filter.counts(rod, 0));
  EXPECT_FALSE(filter.counts(rod, 1.0));
  EXPECT_TRUE(filter.counts(rod, 1.01));
  EXPECT_TRUE(filter.counts(rod, 29.5));
}

TEST(NeighbourFilter, LeavesOutWhatTheOtherEndIsMountedOnToo) {
  const ProjectText project = past(rod_at("130.9"));
  const NeighbourFilter filter = filter_of(project);
  const Obstacle& rod = of_part(project, "rod");
  EXPECT_TRUE(filter.counts(rod, 0.5));
  EXPECT_TRUE(filter.counts(rod, 28.99));
  EXPECT_FALSE(filter.counts(rod, 29.0));
}

TEST(NeighbourFilter, CountsWhatIsFartherFromTheNodeThanAMounting) {
  const ProjectText project = past(rod_at("98.99"));
  EXPECT_TRUE(filter_of(project).counts(of_part(project, "rod"), 0));
}

TEST(NeighbourFilter, CountsWhatANodeHangsBeside) {
  const ProjectText project = past(rod_at("99.01"), "[]", "union");
  EXPECT_TRUE(filter_of(project).counts(of_part(project, "rod"), 0));
}

/// A cable's end at the tip of a mover that hangs from FS 100, WL 14.
ProjectText at_a_horn(const std::string& arm) {
  ProjectText project = past(
      "  movers:\n    - {name: horn, pivot: [100, 0, 14], axis: [0, 1, 0], points: [[100, 0, 14], "
      "[100, 0, 10]], radius: 0.4, sweep: [-20, 20]}\n",
      "[]", "horn" + arm);
  return project;
}

TEST(NeighbourFilter, LeavesOutTheMovingPartThatACablesEndGoesWith) {
  const ProjectText project = at_a_horn(", arm: {pivot: [100, 0, 14], axis: [0, -1, 0]}");
  const NeighbourFilter filter = filter_of(project);
  EXPECT_FALSE(filter.counts(of_part(project, "horn"), 0));
  EXPECT_TRUE(filter.counts(of_part(project, "horn"), 29));
}

TEST(NeighbourFilter, CountsAMovingPartThatTheEndDoesNotTurnWith) {
  for (const std::string arm : {"", ", arm: {pivot: [100, 0, 6], axis: [0, 1, 0]}",
                                ", arm: {pivot: [100, 0, 14], axis: [1, 0, 0]}"}) {
    const ProjectText project = at_a_horn(arm);
    EXPECT_TRUE(filter_of(project).counts(of_part(project, "horn"), 0.5)) << arm;
  }
}

std::string frame(const std::string& edge) {
  return "  frames:\n    - {name: F4, station: 115, thickness: 0.032, outline: [[-6, 4], [6, 4], "
         "[6, "
         "16], [-6, 16]],\n       holes: [{name: hole, centre: [0, 10], diameter: 0.75, edge: " +
         edge + "}]}\n" +
         "  solids:\n    - {name: rod, cylinder: {from: [115, 5, 9], to: [115, 5, 11], diameter: "
         "1}}\n";
}

TEST(NeighbourFilter, KnowsTheFrameBeingPassedForAnInchEitherWay) {
  const ProjectText project = past(frame("bare"));
  const NeighbourFilter filter = filter_of(project);
  const Obstacle& web = of_part(project, "F4");
  EXPECT_FALSE(filter.crossing_near(web, 13.99));
  EXPECT_TRUE(filter.crossing_near(web, 14.01));
  EXPECT_TRUE(filter.crossing_near(web, 15.99));
  EXPECT_FALSE(filter.crossing_near(web, 16.01));
  EXPECT_FALSE(filter.crossing_near(of_part(project, "rod"), 15));
}

const std::string stays = ", travel: {forward: 0, aft: 0}";

TEST(NeighbourFilter, TellsGuardedPassagesFromBareOnes) {
  for (const std::string edge : {"grommet", "bushing", "edge-trim"}) {
    const ProjectText project = past(frame(edge), "[]", "bulkhead", stays);
    EXPECT_TRUE(filter_of(project).guarded_crossing_near(of_part(project, "F4"), 15)) << edge;
    EXPECT_FALSE(filter_of(project).guarded_crossing_near(of_part(project, "F4"), 17)) << edge;
  }
  for (const std::string edge : {"bare", "rolled"}) {
    const ProjectText project = past(frame(edge));
    EXPECT_FALSE(filter_of(project).guarded_crossing_near(of_part(project, "F4"), 15)) << edge;
  }
}

TEST(HoleIsGuarded, ByAGuideThatTheRouteHasInIt) {
  for (const std::string hold : {"fairlead", "grommet", "bushing"}) {
    const ProjectText project =
        past(frame("bare"), "[{at: [115, 0, 10], hold: " + hold + ", through: hole}]", "bulkhead",
             stays);
    EXPECT_TRUE(filter_of(project).guarded_crossing_near(of_part(project, "F4"), 15)) << hold;
  }
  for (const std::string hold : {", hold: clamp", ""}) {
    const ProjectText project =
        past(frame("bare"), "[{at: [115, 0, 10], through: hole" + hold + "}]");
    EXPECT_FALSE(is_guarded(project.route("route"), project.route("route").crossings.at(0)))
        << hold;
  }
}

TEST(HoleIsGuarded, ForACableThatMoves) {
  // A travel that is not stated may be any.
  for (const std::string travel : {", travel: {forward: 1, aft: 0}", ""}) {
    for (const auto& [edge, hold, guarded] : {std::tuple{"bare", "fairlead", true},
                                              {"bare", "bushing", true},
                                              {"bare", "grommet", false},
                                              {"bushing", "fairlead", true},
                                              {"bushing", "clamp", false},
                                              {"edge-trim", "clamp", false}}) {
      const ProjectText project =
          past(frame(edge), "[{at: [115, 0, 10], through: hole, hold: " + std::string(hold) + "}]",
               "bulkhead", travel);
      const PreparedRoute& route = project.route("route");
      EXPECT_EQ(is_guarded(route, route.crossings.at(0)), guarded) << edge << " " << hold;
    }
  }
}

TEST(HoleIsGuarded, NotByAGuideInAnotherHole) {
  const ProjectText project = past(
      frame("bare"), "[{at: [110, 0, 10], hold: fairlead}, {at: [115, 0, 10], through: hole}]");
  EXPECT_FALSE(filter_of(project).guarded_crossing_near(of_part(project, "F4"), 15));
}

}  // namespace
}  // namespace linewright
