#pragma once
// Rows of the rules about single lines, each at its edge.

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "lines/motion/free_spans.hpp"
#include "rules/cable_project.hpp"
#include "rules/fitting_project.hpp"
#include "rules/limit_edge.hpp"

namespace linewright::line_edges {

inline constexpr double degree = std::numbers::pi / 180;

/// `first` aft, a square turn of the radius, 5 in to the right.
inline std::vector<Judgement> square_turn(const std::string& line, double radius_in,
                                          double first_in) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {first_in, 5, 0});
  project.route("main", line, "port", "altimeter", {bent({first_in, 0, 0}, radius_in)});
  return project.judged_by("bend-fit");
}

/// Two square turns of the radius, `apart` from corner to corner.
inline std::vector<Judgement> step(const std::string& line, double radius_in, double apart_in) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {40, apart_in, 0});
  project.route("main", line, "port", "altimeter",
                {bent({20, 0, 0}, radius_in), bent({20, apart_in, 0}, radius_in)});
  return project.judged_by("bend-fit");
}

/// A clamp on a square corner, which the arc passes at R (√2 - 1).
inline std::vector<Judgement> clamped_beside(double offset_in) {
  RoutePoint point = clamped({10, 0, 0});
  point.bend_in = offset_in / (std::numbers::sqrt2 - 1);
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {10, 10, 0});
  project.route("main", "tube-nylon-1/4", "port", "altimeter", {point});
  return project.judged_by("bend-fit");
}

inline std::vector<Judgement> unguided(double turn_deg) {
  const double turn = turn_deg * degree;
  return cable_project({corner({50, 0, 10})}, {50 + 50 * std::cos(turn), 50 * std::sin(turn), 10})
      .judged_by("bend-fit");
}

/// A sleeve bent to 4 in round a square turn, clamped before it and, where two are wanted, after.
inline std::vector<Judgement> sleeved_turn(double holds) {
  std::vector<RoutePoint> points{clamped({42, 0, 10}), bent({50, 0, 10}, 4)};
  if (holds >= 2) points.push_back(clamped({50, 8, 10}));
  SmallProject project = cable_project(points, {50, 40, 10});
  the_route(project).sleeves.push_back({40, 60, 0.18, 0.25, {}});
  set_travel(project, 0, 0);
  return project.judged_by("bend-fit");
}

/// A quarter turn about a pulley of 3 in, whose middle is 1.5 in and `away_in` from the pedal.
inline std::vector<Judgement> beside_groove(double away_in) {
  RoutePoint pulley = pulley_at({0, 1.5 + away_in, 10}, 3, {0, 0, 1});
  pulley.given = PointGiven::centre;
  return cable_project({pulley}, {1.5, 40, 10}).judged_by("bend-fit");
}

/// A horn 40 in behind a fairlead on an arm of 5 in, square to the cable: at its nearest the end is
/// root(40² + 5²) - 5 in from the fairlead. The travel asked is less than that gives by `spare`.
inline std::vector<Judgement> on_arm(double spare_in) {
  SmallProject project = cable_project({held({60, 0, 10}, HoldKind::fairlead)});
  project.project.nodes.back().arm = Arm{{100, 0, 5}, {0, 1, 0}};
  set_travel(project, 40 - (std::hypot(40, 5) - 5) - spare_in, 0);
  return project.judged_by("bend-fit");
}

// A clamp between planes: TM 1-1500-204-23-2 p. 4-66 [verified]. One OD straight: a pneumatic-valve
// user manual [verified]. Metal tube and supports [common practice, no source]; the rest is
// geometry [calculated].
/// A cable of 100 in that its arm of 10 in, square to it, draws back by a turn of 30 degrees: to
/// 5 in nearer along it, and 10 (1 - cos 30°) below. The arm's part sweeps so much less.
inline std::vector<Judgement> turned_beyond_sweep(double beyond_deg) {
  SmallProject project = cable_project();
  project.project.nodes.back().arm = Arm{{100, 0, 0}, {0, 1, 0}};
  set_travel(project, 100 - std::hypot(95, 10 - 10 * std::cos(std::numbers::pi / 6)), 0);
  project.project.structure.movers.push_back({"bellcrank",
                                              {100, 0, 0},
                                              {0, 1, 0},
                                              {{100, 0, 0}, {100, 0, 10}},
                                              0.2,
                                              beyond_deg - 30,
                                              5,
                                              {}});
  return project.judged_by("bend-fit");
}

/// A hose with a square turn to the right and one upward, with or without a clamp between.
inline std::vector<Judgement> turned_in_two_planes(bool clamped_between) {
  SmallProject project;
  project.node("firewall", NodeKind::bulkhead, {0, 0, 0})
      .node("gauge", NodeKind::instrument, {20, 20, 20});
  std::vector<RoutePoint> points{bent({20, 0, 0}, 4), bent({20, 20, 0}, 4)};
  if (clamped_between) points.insert(points.begin() + 1, clamped({20, 10, 0}));
  project.route("pressure", "hose-rubber-1/4", "firewall", "gauge", points);
  return project.judged_by("bend-fit");
}

/// Out of a port that points aft at an angle; the build tolerance explains so much of it.
inline std::vector<Judgement> out_of_port(double angle_deg, const std::string& line,
                                          double tolerance_in) {
  const double explained = std::asin(tolerance_in / 20);
  const double angle = angle_deg * degree + explained;
  SmallProject project = from_union({}, line, {1 + 20 * std::cos(angle), 20 * std::sin(angle), 0});
  project.project.build_tolerance_in = tolerance_in;
  return project.judged_by("bend-fit");
}

/// At the angle whose bend, of the line's least radius, reaches so far into the fitting.
inline std::vector<Judgement> bent_in_port(const std::string& line, double depth_in,
                                           double spare_in) {
  const double radius = built_in_catalogue().find_line(line)->minimum_bend_radius_in->value;
  const double angle = 2 * std::atan((depth_in - spare_in) / radius);
  return out_of_port(angle / degree, line, 0.06);
}

inline LimitEdges of_bend_fit() {
  const std::string metal = "tube-aluminium-1/4";
  return {{.rule = "bend-fit",
           .row = "overlap",
           .limit = 0,
           .source = "geometry",
           .judged = [](double spare) { return step("hose-rubber-3/16", 4, 8 + spare); }},
          {.rule = "bend-fit",
           .row = "plastic-tube-straight",
           .limit = 0.25,
           .source = "pneumatic-valve user manual",
           .judged = [](double spare) { return square_turn("tube-nylon-1/4", 1, 1.25 + spare); }},
          {.rule = "bend-fit",
           .row = "metal-tube-straight-at-fitting",
           .limit = 0.5,
           .broken = Verdict::warn,
           .source = "nut and sleeve length",
           .judged = [=](double spare) { return square_turn(metal, 0.5625, 1.0625 + spare); }},
          {.rule = "bend-fit",
           .row = "metal-tube-straight-between-bends",
           .limit = 0.25,
           .broken = Verdict::warn,
           .source = "what a bender grips",
           .judged = [=](double spare) { return step(metal, 0.5625, 1.375 + spare); }},
          {.rule = "bend-fit",
           .row = "support-off-line",
           .limit = 0.06,
           .broken = Verdict::warn,
           .source = "clamps sit on straights",
           .judged = [](double spare) { return clamped_beside(0.06 - spare); }},
          {.rule = "bend-fit",
           .row = "unguided-cable-turn",
           .limit = 0,
           .source = "a cable under tension runs straight",
           .judged = [](double spare) { return unguided(-spare); },
           .let_pass = 0.01,  // a smaller turn counts as straight
           .listed = false},
          {.rule = "bend-fit",
           .row = "sleeve-turn-holds",
           .limit = 2,
           .broken = Verdict::warn,
           .source = "held on one side gives way on the other",
           .judged = [](double spare) { return sleeved_turn(std::min(2.0, 2 + spare)); },
           .step = one_off,
           .measured = false},  // no turn has three sides
          {.rule = "bend-fit",
           .row = "missed-groove",
           .source = "leaves a groove along its tangents",
           .judged = beside_groove,
           .at_limit = false,  // which way a cable from the rim itself goes is not told
           .listed = false},
          {.rule = "bend-fit",
           .row = "arm-travel",
           .source = "twice its length at the most",
           .judged = on_arm,
           .listed = false},
          {.rule = "bend-fit",
           .row = "arm-sweep",
           .limit = 1,
           .source = "an arm turns with the part that it is on",
           .judged = [](double spare) { return turned_beyond_sweep(1 - spare); },
           .listed = false},
          {.rule = "bend-fit",
           .row = "clamp-between-planes",
           .limit = 1,
           .broken = Verdict::warn,
           .source = "TM 1-1500-204-23-2 p. 4-66",
           .judged = [](double spare) { return turned_in_two_planes(spare >= 0); },
           .step = one_off,
           .listed = false},
          {.rule = "bend-fit",
           .row = "port-angle",
           .limit = 3,
           .broken = Verdict::warn,
           .source = "a nut does not draw a tube round",
           .judged = [](double spare) { return out_of_port(3 - spare, "tube-steel-1/4", 0.06); }},
          {.rule = "bend-fit",
           .row = "tube-bend-in-port",
           .limit = 0.06,
           .source = "R tan",
           .judged = [=](double spare) { return bent_in_port(metal, 0.06, spare); },
           .listed = false},  // where it holds, the angle is too large all the same
          {.rule = "bend-fit",
           .row = "hose-bend-in-port",
           .source = "R tan",
           .judged =
               [](double spare) {
                 const Line& hose = *built_in_catalogue().find_line("hose-rubber-1/4");
                 return bent_in_port(hose.name, hose.outside_diameter_in, spare);
               },
           .listed = false}};
}

inline std::vector<Judgement> spaced(const SmallProject& project) {
  return project.judged_by("support-spacing");
}

inline SmallProject tail(double length_in) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("loose", NodeKind::end, {length_in, 0, 0});
  project.route("main", "tube-steel-1/4", "port", "loose");
  return project;
}

// 1/4 in of steel tube 16 in, of aluminium 13.5 in: MIL-H-8891A Table II [verified], FAA-H-8083-30
// Table 7-5 [from memory]. With a fitting a fifth less, and the average of two: the paragraph above
// Table II [verified]. A free end 0.4 of it [common practice, no source].
inline LimitEdges of_support_spacing() {
  const double mixed_in = 0.8 * (16 + 13.5) / 2;
  return {{.rule = "support-spacing",
           .row = "span-with-fitting",
           .limit = 12.8,
           .source = "cut the spacing by about 20 %",
           .judged = [](double spare) { return spaced(joined_by_tee(8, 4.8 - spare)); }},
          {.rule = "support-spacing",
           .row = "span-of-mixed-lines",
           .limit = mixed_in,
           .source = "MIL-H-8891A, paragraph above Table II",
           .judged =
               [=](double spare) {
                 return spaced(joined_lines(NodeKind::union_fitting, std::nullopt, "tube-steel-1/4",
                                            6, "tube-aluminium-1/4", mixed_in - 6 - spare));
               }},
          {.rule = "support-spacing",
           .row = "free-end",
           .limit = 6.4,
           .broken = Verdict::warn,
           .source = "equal first frequency",
           .judged = [](double spare) { return spaced(tail(6.4 - spare)); }}};
}

/// 20 in of aluminium tube with square steps in it: two bends each, but for the last of an odd
/// number, from which the tube goes on to the right.
inline std::vector<Judgement> bent_so_often(int bends) {
  std::vector<RoutePoint> points;
  Vec3 at{0, 0, 0};
  for (int i = 0; i < bends; ++i) {
    at = at + (i % 2 == 0 ? Vec3{5, 0, 0} : Vec3{0, 5, 0});
    points.push_back(bent(at, 1));
  }
  SmallProject project;
  project.node("forward", NodeKind::bulkhead, {0, 0, 0})
      .node("aft", NodeKind::instrument, at + (bends % 2 == 0 ? Vec3{5, 0, 0} : Vec3{0, 5, 0}));
  project.route("main", "tube-aluminium-1/4", "forward", "aft", points);
  return project.judged_by("straight-run");
}

/// One corner half way, off to the side: each leg leans by half of the turn.
inline std::vector<Judgement> turned_once(double turn_deg) {
  SmallProject project;
  project.node("forward", NodeKind::bulkhead, {0, 0, 0})
      .node("aft", NodeKind::instrument, {20, 0, 0});
  project.route("main", "tube-aluminium-1/4", "forward", "aft",
                {bent({10, 10 * std::tan(turn_deg / 2 * degree), 0}, 1)});
  return project.judged_by("straight-run");
}

// A bend between fittings: MIL-H-8891A para 3.11.4.5 [verified]. What counts as one is the rule's
// own figure: at it a straight run is as wrong as ever.
inline LimitEdges of_straight_run() {
  const std::string source = "MIL-H-8891A para 3.11.4.5";
  return {{.rule = "straight-run",
           .row = "bends-between-fittings",
           .limit = 1,
           .source = source,
           .judged = [](double spare) { return bent_so_often(static_cast<int>(1 + spare)); },
           .step = one_off},
          {.rule = "straight-run",
           .row = "turn-that-counts",
           .limit = 1,
           .source = source,
           .judged = [](double spare) { return turned_once(5 + spare); },
           .measured = false,
           .cited = "bends-between-fittings"}};
}

inline std::vector<Judgement> hose_over_twenty(double length_in) {
  SmallProject project;
  project.node("firewall", NodeKind::bulkhead, {30, 0, 0})
      .node("gauge", NodeKind::instrument, {50, 0, 0});
  project.route("pressure", "hose-rubber-1/4", "firewall", "gauge").length_in = length_in;
  return project.judged_by("slack");
}

/// The same to what is on the engine.
inline std::vector<Judgement> hose_to_engine(double length_in) {
  SmallProject project;
  project.node("firewall", NodeKind::bulkhead, {30, 0, 0})
      .node("pump", NodeKind::instrument, {50, 0, 0});
  project.project.nodes.back().on_engine = true;
  project.route("pressure", "hose-rubber-1/4", "firewall", "pump").length_in = length_in;
  return project.judged_by("slack");
}

/// A bundle to a pump on the engine, 20 in off, in a bow that makes it so long.
inline std::vector<Judgement> bundle_to_engine(double length_in) {
  SmallProject project;
  project.node("firewall", NodeKind::bulkhead, {30, 0, 0})
      .node("pump", NodeKind::instrument, {50, 0, 0});
  project.project.nodes.back().on_engine = true;
  const double deep_in = std::sqrt(length_in * length_in / 4 - 100);
  project.route("wires", "wire-1/4", "firewall", "pump", {bent({40, 0, -deep_in}, 0)});
  return project.judged_by("slack");
}

// 5 to 8 % of a hose's length: US Navy 14105 p. 5-11; 1-1/2 in to the engine: 14018 p. 5-26
// [verified]; that what is no hose needs as much is [common practice, no source].
inline LimitEdges of_slack() {
  return {{.rule = "slack",
           .row = "least-slack",
           .limit = 20 / 0.95,
           .source = "US Navy 14105 p. 5-11",
           .judged = [](double spare) { return hose_over_twenty(20 / 0.95 + spare); }},
          {.rule = "slack",
           .row = "most-slack",
           .limit = 20 / 0.92,
           .source = "US Navy 14105 p. 5-11",
           .judged = [](double spare) { return hose_over_twenty(20 / 0.92 - spare); }},
          {.rule = "slack",
           .row = "slack-to-engine",
           .limit = 21.5,
           .source = "US Navy 14018 p. 5-26",
           .judged = [](double spare) { return hose_to_engine(21.5 + spare); }},
          {.rule = "slack",
           .row = "gives-to-engine",
           .limit = 1.5,
           .broken = Verdict::warn,
           .source = "what is stiff or taut pulls",
           .judged = [](double spare) { return bundle_to_engine(21.5 + spare); },
           .listed = false}};
}

/// A bundle over `span_in` between two posts that nothing ties.
inline std::vector<Judgement> untied(double span_in) {
  SmallProject project;
  project.node("stud", NodeKind::end, {0, 0, 0}, true)
      .node("lamp", NodeKind::end, {span_in, 0, 0}, true);
  project.route("wires", "wire-1/4", "stud", "lamp").tied = false;
  return project.judged_by("wiring");
}

/// A bundle that comes down from a post and hangs `loop_in` below a connector, with sharp corners.
inline std::vector<Judgement> to_connector(double loop_in) {
  SmallProject project;
  project.node("stud", NodeKind::end, {0, 0, 20}, true)
      .node("radio", NodeKind::end, {20, 0, 10}, true);
  project.project.nodes.front().connector = false;
  project.project.nodes.back().connector = true;
  project.route("wires", "wire-1/4", "stud", "radio", {bent({10, 0, 10 - loop_in}, 0)}).tied = true;
  return project.judged_by("wiring");
}

// AC 43.13-1B paras 11-158 b and 11-96 x [verified].
inline LimitEdges of_wiring() {
  return {{.rule = "wiring",
           .row = "ties-between-supports",
           .limit = 12,
           .source = "AC 43.13-1B para 11-158 b",
           .judged = [](double spare) { return untied(12 - spare); }},
          {.rule = "wiring",
           .row = "drip-loop",
           .source = "AC 43.13-1B para 11-96 x",
           .judged = to_connector,
           .at_limit = false,  // no loop at all
           .measured = false}};
}

/// A cable of 30 in and the cruise band whose upper edge, a tenth up, is `clear_hz` below its
/// frequency by the first order. Ten blades keep the other orders away.
inline std::vector<Judgement> above_cruise(double clear_hz) {
  SmallProject project = cable_project({}, {30, 0, 10});
  set_tension(project, 30);
  project.project.excitation = Excitation{600, 2700, {}, 10, {}};
  const double frequency_hz = *sole(project.judged_by("resonance")).value;
  const double high_rpm = (frequency_hz - clear_hz) * 60 / 1.1;
  project.project.excitation->cruise = SpeedBand{high_rpm - 100, high_rpm};
  return project.judged_by("resonance");
}

inline LimitEdges all() {
  LimitEdges edges;
  for (const LimitEdges& some :
       {of_bend_fit(), of_support_spacing(), of_straight_run(), of_slack(), of_wiring()})
    edges.insert(edges.end(), some.begin(), some.end());
  // A tenth off the cruise band [common practice, no source].
  edges.push_back({.rule = "resonance",
                   .row = "off-cruise-band",
                   .broken = Verdict::warn,
                   .source = "margin between a natural frequency and what excites it",
                   .judged = above_cruise});
  return edges;
}

}  // namespace linewright::line_edges
