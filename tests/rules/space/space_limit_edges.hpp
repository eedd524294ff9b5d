#pragma once
// Rows of the rules about holes, supports and chafing, each at its edge.

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

/// In the middle of a bare hole, `limit_in` and more off its edge.
inline LimitEdge hole_edge(const std::string& row, const std::string& line, double limit_in,
                           Verdict broken, const std::string& source) {
  return {.rule = "frame-crossing",
          .row = row,
          .limit = limit_in,
          .broken = broken,
          .source = source,
          .judged = [=](double spare) {
            return through_hole(line, 2 * (radius_in(line) + limit_in + spare))
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

// A cable in a clamp: 14 CFR 23.685(a) [verified]. What a stand-off spans is [common practice, no
// source], and how far no bracket reaches the rule's own figure.
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
           .row = "goes-through",
           .limit = 0,
           .source = "geometry",
           .judged = guided_by_bore},
          {.rule = "support-mount",
           .row = "moves-in-clamp",
           .limit = 0,
           .source = "14 CFR 23.685(a)",
           .judged = [](double spare) { return moving_in_clamp(std::max(0.0, -spare)); },
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

// Tubing: 14 CFR 23.1325(b)(1)(ii); cables: 23.685(a); bundles: AC 43.13-1B para 11-115 [all
// verified]. Reaches are a slack string's, root(3 L s / 8), and the ellipsoid's [calculated].
inline LimitEdges of_chafe() {
  LimitEdge cable = chafe("cable-rubs", eighth_steel, cable_sag_in, Verdict::fail,
                          "14 CFR 23.685(a): no chafing");
  cable.judged = cable_over_block;
  return {
      chafe("tube-rubs", plastic, slack_string_in(20), Verdict::fail, "14 CFR 23.1325(b)(1)(ii)"),
      cable,
      chafe("wire-rubs", wire, slack_string_in(20), Verdict::fail,
            "AC 43.13-1B para 11-115 and 11-118"),
      chafe("any-shape", plastic, ellipsoid_in(20), Verdict::warn, "ellipsoid")};
}

inline LimitEdges all() {
  LimitEdges edges;
  for (const LimitEdges& some : {of_frame_crossing(), of_support_mount(), of_chafe()})
    edges.insert(edges.end(), some.begin(), some.end());
  return edges;
}

}  // namespace linewright::space_edges
