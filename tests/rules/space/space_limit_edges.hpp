#pragma once
// Rows of the rules about holes, supports and chafing, each at its edge.

#include <algorithm>
#include <cmath>
#include <string>

#include "rules/cable_project.hpp"
#include "rules/limit_edge.hpp"
#include "rules/space/gap_limit_edges.hpp"

namespace linewright::space_edges {

using gap_edges::plastic;
using gap_edges::radius_in;
using gap_edges::straight;
using gap_edges::wire;

/// A line along FS 100 to 108, `off_in` above the middle of a hole of frame F1 at FS 104.
inline SmallProject through_hole(const std::string& line, double hole_in, double off_in = 0,
                                 EdgeGuard edge = EdgeGuard::bare,
                                 const std::vector<RoutePoint>& points = {}) {
  SmallProject project;
  project.node("forward", NodeKind::bulkhead, {100, 0, 10 + off_in})
      .node("aft", NodeKind::bulkhead, {108, 0, 10 + off_in});
  project.route("route", line, "forward", "aft", points);
  add_frame(project, "F1", 104, hole_in, edge);
  return project;
}

/// In the middle of an open hole, `limit_in` and more off its edge.
inline LimitEdge hole_edge(const std::string& row, const std::string& line, double limit_in,
                           Verdict broken, const std::string& source,
                           EdgeGuard edge = EdgeGuard::bare) {
  return {.rule = "frame-crossing",
          .row = row,
          .limit = limit_in,
          .broken = broken,
          .source = source,
          .judged = [=](double spare) {
            return through_hole(line, 2 * (radius_in(line) + limit_in + spare), 0, edge)
                .judged_by("frame-crossing");
          }};
}

/// A 1/4 in bundle in a 3/8 in bore, in a hole of 5/8 in: it presses on the grommet where it is
/// drawn more than 1/16 in off the middle.
inline std::vector<Judgement> in_grommet(double spare_in) {
  SmallProject project = through_hole(wire, 0.625, 0.0625 - spare_in, EdgeGuard::grommet);
  project.project.structure.frames[0].holes[0].bore_in = 0.375;
  return project.judged_by("frame-crossing");
}

/// A 1/4 in bundle in the middle of a hole `room_in` over it, or over the bore where one is stated.
inline std::vector<Judgement> in_guard(EdgeGuard edge, std::optional<double> bore_in,
                                       double room_in) {
  SmallProject project =
      through_hole(wire, bore_in.value_or(2 * radius_in(wire)) + room_in, 0, edge);
  project.project.structure.frames[0].holes[0].bore_in = bore_in;
  return project.judged_by("frame-crossing");
}

/// What is judged of the first of two 1/4 in bundles through one bore in a hole of 3/4 in.
inline std::vector<Judgement> two_in_a_bore(double bore_in) {
  SmallProject project = through_hole(wire, 0.75, 0, EdgeGuard::bushing);
  project.project.structure.frames[0].holes[0].bore_in = bore_in;
  project.route("other", wire, "forward", "aft");
  std::vector<Judgement> judgements = project.judged_by("frame-crossing");
  std::erase_if(judgements, [](const Judgement& each) { return each.route != "route"; });
  return judgements;
}

/// A bundle through a bushed hole of 2 in, and another hole of 1 in with `web_in` between the two.
inline std::vector<Judgement> beside_hole(double web_in) {
  SmallProject project = through_hole(wire, 2, 0, EdgeGuard::bushing);
  std::vector<Hole>& holes = project.project.structure.frames[0].holes;
  holes[0].bore_in = 0.375;
  holes.push_back({"beside", Circle{{1.5 + web_in, 10}, 1}, EdgeGuard::bare, {}, {}});
  return project.judged_by("frame-crossing");
}

/// A hole described beside a wall of 0.032 in, at the 1/16 in that a ruler misses less `spare_in`.
inline std::vector<Judgement> described_beside_wall(double spare_in) {
  SmallProject project = straight(wire);
  Panel wall{"wall", {{100, -9, 0}, {100, 9, 0}, {100, 9, 9}, {100, -9, 9}}, 0.032, {}, {}, {}};
  wall.holes.push_back({"hole", {100.016 + 0.0625 - spare_in, 0, 4}, 1, EdgeGuard::bare, {}, {}});
  project.project.structure.panels.push_back(wall);
  return project.judged_by("frame-crossing");
}

/// A point that names the hole of FS 104, half an inch along from it less what is spared.
inline std::vector<Judgement> named_along(double spare_in) {
  return through_hole(wire, 2, 0, EdgeGuard::bare,
                      {through(corner({104.5 - spare_in, 0, 10}), "F1-a")})
      .judged_by("frame-crossing");
}

// Bundles: AC 43.13-1B CHG 1 para 11-115 [verified]; tubes borrow it, and cables keep 1/2 in where
// either can move [common practice, no source].
inline LimitEdges of_frame_crossing() {
  LimitEdge free = hole_edge("free-of-sheet", wire, 0, Verdict::fail, "geometry");
  free.listed = false;  // at no gap it is too near
  return {
      free,
      hole_edge("wire-to-hole-edge", wire, 0.375, Verdict::fail, "grommet unless 3/8 in clear"),
      hole_edge("tube-to-hole-edge", plastic, 0.375, Verdict::warn,
                "borrowed from the wire rule of AC 43.13-1B para 11-115"),
      hole_edge("cable-to-hole-edge", eighth_steel, 0.5, Verdict::warn, "where either can move"),
      hole_edge("line-to-rolled-edge", plastic, 0.375, Verdict::warn, "borrowed",
                EdgeGuard::rolled),
      hole_edge("cable-to-rolled-edge", eighth_steel, 0.5, Verdict::warn, "where either can move",
                EdgeGuard::rolled),
      {.rule = "frame-crossing",
       .row = "grommet-wall",
       .limit = 0.125,
       .broken = Verdict::warn,
       .source = "MS35489",
       .judged = [](double spare) { return in_guard(EdgeGuard::grommet, {}, 0.125 + spare); },
       .listed = false},
      {.rule = "frame-crossing",
       .row = "guard-wall",
       .limit = 0.0625,
       .broken = Verdict::warn,
       .source = "1/32 in of wall",
       .judged = [](double spare) { return in_guard(EdgeGuard::bushing, 0.375, 0.0625 + spare); },
       .listed = false},
      {.rule = "frame-crossing",
       .row = "side-by-side",
       .limit = 0,
       .source = "no two things in one place",
       .judged = [](double spare) { return two_in_a_bore(0.5 + spare); }},
      {.rule = "frame-crossing",
       .row = "whole-guarded-hole",
       .source = "an edge that goes all round",
       .judged = [](double spare) { return beside_hole(spare); },
       .at_limit = false,
       .listed = false},
      {.rule = "frame-crossing",
       .row = "hole-in-wall",
       .source = "a hole is in a wall",
       .judged = described_beside_wall,
       .at_limit = false,
       .listed = false},
      {.rule = "frame-crossing",
       .row = "preload",
       .limit = 0.125,
       .broken = Verdict::warn,
       .source = "no preload on strip or grommet",
       .judged = in_grommet},
      {.rule = "frame-crossing",
       .row = "named-hole",
       .limit = 0.5,
       .source = "the point is in the hole",
       .judged = named_along,
       .listed = false}};
}

/// A bundle clamped to a rod of 1 in, `gap_in` from it.
inline std::vector<Judgement> mounted(double gap_in) {
  SmallProject project = straight(wire, {clamped_to({115, 0, 10}, "rod")});
  const double level = 10 + 0.125 + 0.5 + gap_in;
  project.project.structure.solids.push_back(
      {"rod", Cylinder{{115, -5, level}, {115, 5, level}, 1}, {}});
  return project.judged_by("support-mount");
}

/// A tube clamped to a rod, or to the like of it that turns about its own axis.
inline std::vector<Judgement> held_by_rod(bool moves) {
  SmallProject project = straight(plastic, {clamped_to({115, 0, 10}, "rod")});
  const Vec3 left{115, -5, 10.625};
  const Vec3 right{115, 5, 10.625};
  Structure& structure = project.project.structure;
  if (moves)
    structure.movers.push_back({"rod", left, {0, 1, 0}, {left, right}, 0.5, -30, 30, {}});
  else
    structure.solids.push_back({"rod", Cylinder{left, right, 1}, {}});
  return project.judged_by("support-mount");
}

inline std::vector<Judgement> guided_by_bore(double room_in) {
  SmallProject project = cable_project({held({50, 0, 10}, HoldKind::fairlead)});
  the_route(project).points[0].bore_in = 0.139 + room_in;
  return project.judged_by("support-mount");
}

inline std::vector<Judgement> moving_in_clamp(double travel_in) {
  SmallProject project = cable_project({clamped({50, 0, 10})});
  set_travel(project, travel_in, 0);
  return project.judged_by("support-mount");
}

/// A tube of 15 in from a port to a fitting, clamped `off_in` from its end.
inline std::vector<Judgement> clamped_near_end(double off_in) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {100, 0, 10})
      .node("altimeter", NodeKind::instrument, {115, 0, 10});
  project.route("main", plastic, "port", "altimeter", {clamped({115 - off_in, 0, 10})});
  return project.judged_by("support-mount");
}

/// The same to a fitting whose nut stands out an inch, clamped `off_in` from its face.
inline std::vector<Judgement> clamped_near_nut(double off_in) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {100, 0, 10})
      .node("altimeter", NodeKind::instrument, {116, 0, 10});
  Node& altimeter = project.project.nodes.back();
  altimeter.ports = {{"p", {115, 0, 10}, {-1, 0, 0}, 0, {}}};
  altimeter.body = FittingBody{0.3, 1};
  project.route("main", plastic, "port", "altimeter", {clamped({115 - off_in, 0, 10})}).to_port =
      "p";
  return project.judged_by("support-mount");
}

// A cable in a clamp: 14 CFR 23.685(a) [verified]. No clamp at an end fitting: AC 43.13-1B para
// 12-61 b [verified]; its length [common practice, no source]. What a stand-off spans is [common
// practice, no source], and how far no bracket reaches the rule's own figure.
inline LimitEdges of_support_mount() {
  return {{.rule = "support-mount",
           .row = "stand-off",
           .limit = 2,
           .broken = Verdict::warn,
           .source = "what a clamp on a stand-off spans",
           .judged = [](double spare) { return mounted(2 - spare); }},
          {.rule = "support-mount",
           .row = "out-of-reach",
           .limit = 6,
           .source = "no clamp or bracket is drawn that reaches so far",
           .judged = [](double spare) { return mounted(6 - spare); },
           .listed = false},
          {.rule = "support-mount",
           .row = "held-by-what-moves",
           .source = "carries along holds no line",
           .judged = [](double spare) { return held_by_rod(spare < 0); },
           .at_limit = false,
           .listed = false,
           .measured = false},
          {.rule = "support-mount",
           .row = "goes-through",
           .limit = 0,
           .source = "geometry",
           .judged = guided_by_bore},
          {.rule = "support-mount",
           .row = "moves-in-clamp",
           .limit = 0,
           .source = "14 CFR 23.685(a)",
           .judged = [](double spare) { return moving_in_clamp(std::max(0.0, -spare)); },
           .listed = false},
          {.rule = "support-mount",
           .row = "clamp-off-end-fitting",
           .limit = 0.5,
           .broken = Verdict::warn,
           .source = "AC 43.13-1B para 12-61 b",
           .judged = [](double spare) { return clamped_near_end(0.5 + spare); },
           .listed = false},
          {.rule = "support-mount",
           .row = "clamp-off-nut",
           .limit = 0,
           .broken = Verdict::warn,
           .source = "AC 43.13-1B para 12-61 b",
           .judged = [](double spare) { return clamped_near_nut(1 + spare); },
           .listed = false}};
}

/// A line of `length_in`, and a block `gap_in` under its middle.
inline SmallProject over_block(const std::string& line, double length_in, double gap_in) {
  SmallProject project;
  project.node("forward", NodeKind::bulkhead, {100, 0, 10})
      .node("aft", NodeKind::bulkhead, {100 + length_in, 0, 10});
  project.route("route", line, "forward", "aft");
  const double top = 10 - radius_in(line) - gap_in;
  project.project.structure.solids.push_back(
      {"block", Box{{102, -2, top - 1}, {98 + length_in, 2, top}}, {}});
  return project;
}

/// A hundredth more of line than of way.
inline constexpr double surplus_share = 0.01;
inline double slack_string_in(double length_in) {
  return std::sqrt(3 * length_in * length_in * surplus_share / 8);
}
inline double ellipsoid_in(double length_in) {
  return std::sqrt(std::pow(length_in * (1 + surplus_share), 2) - length_in * length_in) / 2;
}

inline LimitEdge chafe(const std::string& row, const std::string& line, double reach_in,
                       Verdict broken, const std::string& source) {
  return {.rule = "chafe",
          .row = row,
          .limit = reach_in,
          .broken = broken,
          .source = source,
          .judged =
              [=](double spare) {
                SmallProject project = over_block(line, 20, reach_in + spare);
                project.line(line).slack_fraction->value = surplus_share;
                if (line == plastic) project.line(line).weight_lb_per_in->value = 0;
                return project.judged_by("chafe");
              },
          .listed = row == "any-shape"};  // beyond the likely reach it may still be reached
}

/// What hangs off a taut string under its weight: w L² / (8 T), here 0.002 · 100² / (8 · 50).
inline constexpr double cable_sag_in = 0.05;

inline std::vector<Judgement> cable_over_block(double spare_in) {
  SmallProject project = over_block(eighth_steel, 100, cable_sag_in + spare_in);
  project.line(eighth_steel).weight_lb_per_in->value = 0.002;
  project.project.routes[0].tension = Tension{50, {}, {}};
  return project.judged_by("chafe");
}

/// A bundle of three spans of 12 in, and a moving rod over its first clamp.
inline std::vector<Judgement> with_failed_clamp(const std::string& line, double gap_in) {
  SmallProject project;
  project.node("forward", NodeKind::bulkhead, {100, 0, 10})
      .node("aft", NodeKind::bulkhead, {136, 0, 10});
  project.route("route", line, "forward", "aft",
                {held({112, 0, 10}, HoldKind::clamp), held({124, 0, 10}, HoldKind::clamp)});
  project.line(line).slack_fraction->value = surplus_share;
  const double level = 10 + radius_in(line) + 0.5 + gap_in;
  const Vec3 left{112, -5, level};
  const Vec3 right{112, 5, level};
  project.project.structure.movers.push_back(
      {"rod", left, {0, 1, 0}, {left, right}, 0.5, -30, 30, {}});
  return project.judged_by("chafe");
}

/// What the two spans of 12 in can reach as one: at the least a slack string's bow over 24 in.
inline double reach_of_merged_in(const std::vector<Judgement>& near) {
  return std::find_if(near.begin(), near.end(),
                      [](const Judgement& each) { return contains(each.message, "lets go"); })
      ->limit.value();
}

/// The same bundle beside a vent line of steel, short of where its middle clamp lets it reach.
inline std::vector<Judgement> with_failed_clamp_by_vent(double gap_in) {
  SmallProject project;
  project.node("forward", NodeKind::bulkhead, {100, 0, 10})
      .node("aft", NodeKind::bulkhead, {136, 0, 10});
  project.route("route", wire, "forward", "aft",
                {held({112, 0, 10}, HoldKind::clamp), held({124, 0, 10}, HoldKind::clamp)});
  project.line(wire).slack_fraction->value = surplus_share;
  const double level = 10 + radius_in(wire) + radius_in("tube-steel-1/4") + gap_in;
  project.node("left", NodeKind::bulkhead, {112, -0.1, level})
      .node("right", NodeKind::bulkhead, {112, 0.1, level});
  Route& vent = project.route("vent", "tube-steel-1/4", "left", "right");
  vent.system = SystemKind::vent;
  vent.system_name = "vent";
  return project.judged_by("chafe");
}

// Tubing: 14 CFR 23.1325(b)(1)(ii); cables: 23.685(a); bundles: AC 43.13-1B para 11-115 [all
// verified], and with a clamp failed by a control, para 11-125, or a vent line, 11-96 w [verified];
// tubes are held to the former, too [common practice, no source].
// Reaches are a slack string's, root(3 L s / 8), and the ellipsoid's [calculated].
inline LimitEdges of_chafe() {
  LimitEdge cable = chafe("cable-rubs", eighth_steel, cable_sag_in, Verdict::fail,
                          "14 CFR 23.685(a), (c): no chafing");
  cable.judged = cable_over_block;
  return {
      chafe("tube-rubs", plastic, slack_string_in(20), Verdict::fail, "14 CFR 23.1325(b)(1)(ii)"),
      cable,
      chafe("wire-rubs", wire, slack_string_in(20), Verdict::fail,
            "AC 43.13-1B para 11-115 and 11-118"),
      chafe("casing-rubs", "conduit-1/4", slack_string_in(20), Verdict::fail, "14 CFR 23.685(a)"),
      {.rule = "chafe",
       .row = "clamp-failed",
       .source = "AC 43.13-1B para 11-125",
       .judged =
           [](double spare) {
             return with_failed_clamp(wire, reach_of_merged_in(with_failed_clamp(wire, 1)) + spare);
           },
       .listed = false},
      {.rule = "chafe",
       .row = "tube-clamp-failed",
       .broken = Verdict::warn,
       .source = "what is asked of wire bundles",
       .judged =
           [](double spare) {
             return with_failed_clamp(plastic,
                                      reach_of_merged_in(with_failed_clamp(plastic, 0.5)) + spare);
           },
       .listed = false},
      {.rule = "chafe",
       .row = "clamp-failed-by-vent",
       .source = "AC 43.13-1B CHG 1 para 11-96 w",
       .judged =
           [](double spare) {
             return with_failed_clamp_by_vent(reach_of_merged_in(with_failed_clamp_by_vent(1)) +
                                              spare);
           },
       .listed = false},
      {.rule = "chafe",
       .row = "load-factor",
       .limit = 3.8,
       .broken = Verdict::warn,
       .source = "14 CFR 25.337(b)",
       .judged =
           [](double spare) {
             SmallProject project;
             project.node("forward", NodeKind::bulkhead, {100, 0, 10})
                 .node("aft", NodeKind::bulkhead, {110, 0, 10});
             project.route("line", plastic, "forward", "aft");
             project.project.load_factor = {3.8 + spare, -1, SourceLocation{"a.yaml", 3, 1}};
             return project.judged_by("chafe");
           },
       .listed = false},
      chafe("any-shape", plastic, ellipsoid_in(20), Verdict::warn, "pulled tight")};
}

inline LimitEdges all() {
  LimitEdges edges;
  for (const LimitEdges& some : {of_frame_crossing(), of_support_mount(), of_chafe()})
    edges.insert(edges.end(), some.begin(), some.end());
  return edges;
}

}  // namespace linewright::space_edges
