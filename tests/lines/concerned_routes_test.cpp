// Which lines a change of some can concern.

#include "lines/concerned_routes.hpp"

#include <gtest/gtest.h>

#include <vector>

#include "lines/route_project.hpp"

namespace linewright {
namespace {

using Ones = std::vector<char>;

/// Three tubes of 20 in along FS, so far apart in BL, each of a system of its own.
RouteProject three_tubes(double apart_in) {
  RouteProject tubes;
  for (int i = 0; i < 3; ++i) {
    Route& route = tubes.route({0, i * apart_in, 0}, {20, i * apart_in, 0});
    route.system_name = "static: " + route.name;
  }
  return tubes;
}

/// Of a change of the first.
ConcernedRoutes concerned(const Project& before, const Project& now) {
  return concerned_routes(before, prepare(now), {0});
}
ConcernedRoutes concerned(const Project& project) {
  return concerned(project, project);
}

TEST(ConcernedRoutes, AreThoseWithinTwoInches) {
  EXPECT_EQ(concerned(three_tubes(1.9).project).joined, (Ones{1, 0, 0}));
  EXPECT_EQ(concerned(three_tubes(1.9).project).with_neighbours, (Ones{1, 1, 0}));
  EXPECT_EQ(concerned(three_tubes(2.5).project).with_neighbours, (Ones{1, 0, 0}));
}

TEST(ConcernedRoutes, AreThoseThatItWasNearToAsWell) {
  const RouteProject tubes = three_tubes(10);
  Project before = tubes.project;
  RoutePoint beside_last;
  beside_last.at = {10, 19, 0};
  before.routes[0].points.push_back(beside_last);
  EXPECT_EQ(concerned(before, tubes.project).with_neighbours, (Ones{1, 1, 1}));
}

TEST(ConcernedRoutes, AreWhatIsJoinedToItOneThroughAnother) {
  const RouteProject tubes = three_tubes(30);
  Project project = tubes.project;
  project.routes[1].from = project.routes[0].to;
  project.routes[2].from = project.routes[1].to;
  EXPECT_EQ(concerned(project).joined, (Ones{1, 1, 1}));

  project = tubes.project;
  project.routes[0].system_name = project.routes[2].system_name;
  EXPECT_EQ(concerned(project).joined, (Ones{1, 0, 1}));

  project = tubes.project;
  project.routes[0].control = project.routes[2].control = "rudder";
  EXPECT_EQ(concerned(project).joined, (Ones{1, 0, 1}));

  project = tubes.project;
  project.bundles.push_back({"tied", {"tube-0", "tube-1"}, 0, 10, 2, {}});
  EXPECT_EQ(concerned(project).joined, (Ones{1, 1, 0}));
}

TEST(ConcernedRoutes, AreWhatItWasJoinedToAsWell) {
  const RouteProject tubes = three_tubes(30);
  Project before = tubes.project;
  before.routes[0].to = before.routes[1].to;
  EXPECT_EQ(concerned(before, tubes.project).joined, (Ones{1, 1, 0}));
}

TEST(ConcernedRoutes, AreThoseWithinEightInchesOfItsFittingOrPulley) {
  RouteProject tubes = three_tubes(7.5);
  tubes.project.nodes[0].body = FittingBody{0.5, 0.2};
  tubes.project.nodes[0].ports.push_back({"a", {0, 0, 0}, {1, 0, 0}, 0, {}});
  EXPECT_EQ(concerned(tubes.project).with_neighbours, (Ones{1, 1, 0}));

  Project with_pulley = three_tubes(7.5).project;
  RoutePoint pulley;
  pulley.at = {10, 0, 0};
  pulley.hold = HoldKind::pulley;
  with_pulley.routes[0].points.push_back(pulley);
  EXPECT_EQ(concerned(with_pulley).with_neighbours, (Ones{1, 1, 0}));
}

// A line that runs askew is not taken for all of the box that it fills.
TEST(ConcernedRoutes, LeaveOutWhatLiesInTheBoxOfALineButFarFromIt) {
  RouteProject tubes;
  tubes.route({0, 0, 0}, {60, 60, 0}).system_name = "static: a";
  tubes.route({50, 5, 0}, {60, 5, 0}).system_name = "static: b";
  EXPECT_EQ(concerned(tubes.project).with_neighbours, (Ones{1, 0}));
}

// The arc of a wide bend lies outside of the straight between its ends.
TEST(ConcernedRoutes, SeeAllOfAnArc) {
  RouteProject tubes;
  tubes.route({{{0, 0, 0}, 0}, {{20, 0, 0}, 19}, {{20, 20, 0}, 0}}).system_name = "static: a";
  const double out = 19 / std::sqrt(2);
  tubes.route({1 + out + 1, 19 - out - 1, -5}, {1 + out + 1, 19 - out - 1, 5}).system_name =
      "static: b";
  EXPECT_EQ(concerned(tubes.project).with_neighbours, (Ones{1, 1}));
}

}  // namespace
}  // namespace linewright
