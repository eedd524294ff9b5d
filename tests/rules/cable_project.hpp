#pragma once
// Control cables for the cable rules: a run from a pedal at FS 0 to a horn, level at WL 10 unless
// points say otherwise, so that a distance along it is a station.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <tuple>
#include <vector>

#include "lines/prepare.hpp"
#include "rules/small_project.hpp"

namespace linewright {

inline const std::string eighth_steel = "cable-7x19-1/8-steel";

/// A primary rudder cable from the pedal through `points` to the horn at `horn`.
inline SmallProject cable_project(const std::vector<RoutePoint>& points = {},
                                  Vec3 horn = {100, 0, 10},
                                  const std::string& line = eighth_steel) {
  SmallProject project;
  project.node("pedal", NodeKind::pedal, {0, 0, 10}).node("horn", NodeKind::horn, horn);
  Route& route = project.route("rudder-left", line, "pedal", "horn", points);
  route.control = "rudder";
  route.line_where = {"routes.yaml", 104, 11};
  return project;
}

inline Route& the_route(SmallProject& project) {
  return project.project.routes.front();
}

inline Line& the_line(SmallProject& project) {
  return project.line(the_route(project).line);
}

inline void set_tension(SmallProject& project, double rigged_lbf,
                        std::optional<double> limit_load_lbf = std::nullopt) {
  the_route(project).tension = Tension{rigged_lbf, limit_load_lbf, {"routes.yaml", 105, 14}};
}

inline void set_travel(SmallProject& project, double forward_in, double aft_in) {
  the_route(project).travel = Travel{forward_in, aft_in, {"routes.yaml", 106, 13}};
}

/// A frame with one round hole, centred on the run.
inline void add_frame(SmallProject& project, const std::string& name, double station,
                      double hole_diameter_in, EdgeGuard edge = EdgeGuard::bare) {
  Frame frame;
  frame.name = name;
  frame.plane = at_station(station);
  frame.thickness_in = 0.04;
  frame.outline = {{-10, 0}, {10, 0}, {10, 20}, {-10, 20}};
  Hole hole;
  hole.name = name + "-a";
  hole.shape = Circle{{0, 10}, hole_diameter_in};
  hole.edge = edge;
  frame.holes.push_back(hole);
  project.project.structure.frames.push_back(frame);
}

inline RoutePoint through(RoutePoint point, const std::string& hole) {
  point.through = hole;
  return point;
}

inline RoutePoint pulley_at(Vec3 at, double diameter_in, Vec3 axis) {
  RoutePoint point = held(at, HoldKind::pulley);
  point.diameter_in = diameter_in;
  point.axis = axis;
  return point;
}

/// The same run written from its other end.
inline SmallProject reversed(SmallProject project) {
  const PreparedProject prepared = prepare(project.project);
  const double length = prepared.routes.front().length_in();
  Route& route = the_route(project);
  std::swap(route.from, route.to);
  std::reverse(route.points.begin(), route.points.end());
  for (RoutePoint& point : route.points)
    if (point.given == PointGiven::centre && point.axis) point.axis = -*point.axis;
  for (FreeFairlead& free : route.free_fairleads)
    free.leg = static_cast<int>(route.points.size()) - free.leg;
  for (Sleeve& sleeve : route.sleeves) {
    const double from = sleeve.from_in;
    sleeve.from_in = length - sleeve.to_in;
    sleeve.to_in = length - from;
  }
  for (Attachment& each : route.attached) each.at_in = length - each.at_in;
  return project;
}

/// Whichever end a run is written from, a rule says the same of it: verdicts, numbers and places.
inline void expect_same_reversed(const SmallProject& project, std::string_view rule) {
  const auto in_order = [&](const SmallProject& each) {
    std::vector<Judgement> all = each.judged_by(rule);
    std::sort(all.begin(), all.end(), [](const Judgement& a, const Judgement& b) {
      const auto key = [](const Judgement& j) {
        return std::tuple(j.with.value_or(""), j.source, j.at->x + 3 * j.at->y + 7 * j.at->z);
      };
      return key(a) < key(b);
    });
    return all;
  };
  const std::vector<Judgement> there = in_order(project);
  const std::vector<Judgement> back = in_order(reversed(project));
  ASSERT_FALSE(there.empty());
  ASSERT_EQ(there.size(), back.size());
  for (std::size_t i = 0; i < there.size(); ++i) {
    SCOPED_TRACE(there[i].message);
    EXPECT_EQ(there[i].verdict, back[i].verdict);
    EXPECT_EQ(there[i].with, back[i].with);
    EXPECT_EQ(there[i].location, back[i].location);
    EXPECT_NEAR(there[i].value.value_or(-1), back[i].value.value_or(-1), 1e-9);
    EXPECT_NEAR(there[i].limit.value_or(-1), back[i].limit.value_or(-1), 1e-9);
    EXPECT_LT(distance(*there[i].at, *back[i].at), 1e-9);
  }
}

/// What every finding must have, whatever it says.
inline void expect_complete(const Judgement& judgement) {
  EXPECT_FALSE(judgement.message.empty());
  EXPECT_FALSE(judgement.source.empty());
  EXPECT_FALSE(judgement.mend.empty());
  EXPECT_TRUE(judgement.at.has_value());
  EXPECT_GT(judgement.location.line, 0);
}

}  // namespace linewright
