// How far what was changed of some lines can make itself felt.

#include "lines/joined_routes.hpp"

#include <gtest/gtest.h>

#include <functional>
#include <vector>

#include "lines/route_project.hpp"

namespace linewright {
namespace {

using Marks = std::vector<char>;

/// Three tubes side by side, each of a system of its own.
Project three_tubes() {
  RouteProject tubes;
  for (int i = 0; i < 3; ++i) {
    Route& route = tubes.route({0, i * 10.0, 0}, {20, i * 10.0, 0});
    route.system_name = "static: " + route.name;
  }
  return tubes.project;
}

/// To the first.
Marks joined(const Project& before, const Project& now) {
  return joined_routes(before, now, {0});
}
Marks joined(const Project& project) {
  return joined(project, project);
}

TEST(JoinedRoutes, AreNoneThatHaveNothingInCommon) {
  EXPECT_EQ(joined(three_tubes()), (Marks{1, 0, 0}));
}

TEST(JoinedRoutes, AreThoseThatMeetInNodesOneThroughAnother) {
  Project project = three_tubes();
  project.routes[1].from = project.routes[0].to;
  project.routes[2].from = project.routes[1].to;
  EXPECT_EQ(joined(project), (Marks{1, 1, 1}));
}

TEST(JoinedRoutes, AreThoseOfOneSystemControlOrBundle) {
  Project project = three_tubes();
  project.routes[0].system_name = project.routes[2].system_name;
  EXPECT_EQ(joined(project), (Marks{1, 0, 1}));

  project = three_tubes();
  project.routes[0].control = project.routes[2].control = "rudder";
  EXPECT_EQ(joined(project), (Marks{1, 0, 1}));

  project = three_tubes();
  project.bundles.push_back({"tied", {"tube-0", "tube-1"}, 0, 10, 2, {}});
  EXPECT_EQ(joined(project), (Marks{1, 1, 0}));
}

TEST(JoinedRoutes, AreThoseThatWereJoinedAsWell) {
  Project before = three_tubes();
  before.routes[0].to = before.routes[1].to;
  EXPECT_EQ(joined(before, three_tubes()), (Marks{1, 1, 0}));
}

RoutePoint held_by(HoldKind hold) {
  RoutePoint point;
  point.at = {10, 0, 0};
  point.hold = hold;
  return point;
}

using Change = std::function<void(Project&)>;

/// Of a change of the first.
bool changes_gaps_alone(const Project& before, const Change& change) {
  Project now = before;
  change(now);
  return changes_own_gaps_alone(before, now, {0}, joined(before, now));
}

void clamp_it(Project& project) {
  project.routes[0].points.push_back(held_by(HoldKind::clamp));
}

TEST(ChangesOwnGapsAlone, AClampOfAPlainTubeDoes) {
  EXPECT_TRUE(changes_gaps_alone(three_tubes(), clamp_it));
}

TEST(ChangesOwnGapsAlone, WhatOtherLinesCanMeetDoesNot) {
  for (const HoldKind hold :
       {HoldKind::pulley, HoldKind::fairlead, HoldKind::grommet, HoldKind::bushing}) {
    const auto hold_it = [&](Project& project) {
      project.routes[0].points.push_back(held_by(hold));
    };
    EXPECT_FALSE(changes_gaps_alone(three_tubes(), hold_it));
    Project before = three_tubes();
    hold_it(before);
    EXPECT_FALSE(changes_gaps_alone(before, [](Project& now) { now.routes[0].points.clear(); }));
  }
  EXPECT_FALSE(changes_gaps_alone(three_tubes(), [](Project& now) {
    now.routes[0].free_fairleads.push_back({held_by(HoldKind::fairlead), 0});
  }));
}

TEST(ChangesOwnGapsAlone, GuidesThatStayWhereTheyAreAreNoHindrance) {
  Project before = three_tubes();
  before.routes[0].points.push_back(held_by(HoldKind::grommet));
  EXPECT_TRUE(changes_gaps_alone(before, [](Project& now) {
    clamp_it(now);
    now.routes[0].points[0].where.line += 1;
  }));
  EXPECT_FALSE(
      changes_gaps_alone(before, [](Project& now) { now.routes[0].line = "a thicker one"; }));
}

TEST(ChangesOwnGapsAlone, AnotherEndDoesNot) {
  for (const Change& change :
       {Change([](Project& now) { now.routes[0].to = now.routes[1].to; }),
        Change([](Project& now) { std::swap(now.routes[0].from, now.routes[0].to); }),
        Change([](Project& now) { now.routes[0].to_port = "b"; })})
    EXPECT_FALSE(changes_gaps_alone(three_tubes(), change));
}

TEST(ChangesOwnGapsAlone, NothingDoesAtAFittingThatHasABody) {
  Project before = three_tubes();
  before.routes[0].system_name = before.routes[1].system_name;
  before.nodes[5].body = FittingBody{0.5, 0.2};
  EXPECT_TRUE(changes_gaps_alone(before, clamp_it)) << "at a line that is not joined to it";
  before.nodes[3].body = FittingBody{0.5, 0.2};
  EXPECT_FALSE(changes_gaps_alone(before, clamp_it)) << "at one that is";
}

TEST(ChangesOwnGapsAlone, NothingDoesWhereGapsAreMeasuredOrASleevesOutsideIsNotKnown) {
  Project measured = three_tubes();
  measured.built.push_back({});
  EXPECT_FALSE(changes_gaps_alone(measured, clamp_it));

  Project sleeved = three_tubes();
  sleeved.routes[2].sleeves.push_back({});
  EXPECT_FALSE(changes_gaps_alone(sleeved, clamp_it));
  sleeved.routes[2].sleeves[0].outside_in = 0.5;
  EXPECT_TRUE(changes_gaps_alone(sleeved, clamp_it));
}

}  // namespace
}  // namespace linewright
