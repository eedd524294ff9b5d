#pragma once
// Rows of the rules about gaps to structure and to other lines, each at its edge.

#include <cmath>
#include <string>
#include <vector>

#include "rules/cable_project.hpp"
#include "rules/fitting_project.hpp"
#include "rules/limit_edge.hpp"

namespace linewright::gap_edges {

inline const std::string metal = "tube-aluminium-1/4";
inline const std::string plastic = "tube-nylon-1/4";
inline const std::string wire = "wire-1/4";

/// At their largest; a 1/8 in cable may be 0.139 in across (AC 43.13-1B Table 7-3 [verified]).
inline double radius_in(const std::string& line) {
  return line == eighth_steel ? 0.0695 : 0.125;
}

/// A cable, taut and weighing next to nothing: it hangs where it is drawn.
inline void tighten(SmallProject& project) {
  project.line(eighth_steel).weight_lb_per_in->value = 1e-12;
  for (Route& route : project.project.routes)
    if (route.line == eighth_steel) route.tension = Tension{100, std::nullopt, {}};
}

/// A line along FS from 100 to 130 at BL 0, WL 10.
inline SmallProject straight(const std::string& line, const std::vector<RoutePoint>& points = {}) {
  SmallProject project;
  project.node("forward", NodeKind::bulkhead, {100, 0, 10})
      .node("aft", NodeKind::bulkhead, {130, 0, 10});
  project.route("route", line, "forward", "aft", points);
  tighten(project);
  return project;
}

/// A support over FS 115, a guide without play.
inline RoutePoint support(const std::string& line) {
  RoutePoint point =
      held({115, 0, 10}, line == eighth_steel ? HoldKind::fairlead : HoldKind::clamp);
  if (line == eighth_steel) point.bore_in = 0.125;
  return point;
}

enum class Neighbour { rod, rod_at_support, mover };

/// A rod of 1 in across the line, `gap_in` above it: over its support, or 7 in from that. A mover
/// turns about the rod's own axis, and so stays where it is.
inline std::vector<Judgement> cleared(const std::string& line, Neighbour neighbour, double gap_in) {
  SmallProject project = straight(line, {support(line)});
  const double station = neighbour == Neighbour::rod_at_support ? 115 : 108;
  const double level = 10 + radius_in(line) + 0.5 + gap_in;
  const Vec3 left{station, -5, level};
  const Vec3 right{station, 5, level};
  Structure& structure = project.project.structure;
  if (neighbour == Neighbour::mover)
    structure.movers.push_back({"rod", left, {0, 1, 0}, {left, right}, 0.5, -30, 30, {}});
  else
    structure.solids.push_back({"rod", Cylinder{left, right, 1}, {}});
  return project.judged_by("clearance");
}

inline LimitEdge clearance(const std::string& row, const std::string& line, Neighbour neighbour,
                           double limit_in, Verdict broken, const std::string& source) {
  return {.rule = "clearance",
          .row = row,
          .limit = limit_in,
          .broken = broken,
          .source = source,
          .judged = [=](double spare) { return cleared(line, neighbour, limit_in + spare); }};
}

// Metal tube: SAE ARP994 and MIL-H-5440 [from memory]. Bundle to a moving control: AC 43.13-1B para
// 11-125 [from memory]. The rest is [common practice, no source].
/// A pulley 0.4 in wide, and a block so far beside its flange.
inline std::vector<Judgement> pulley_beside_block(double gap_in) {
  RoutePoint point = pulley_at({50, 0, 10}, 5, {0, 1, 0});
  point.outside_in = 5.4;
  point.width_in = 0.4;
  SmallProject project = cable_project({point}, {50, 0, 50});
  tighten(project);
  project.project.structure.solids.push_back(
      {"block", Box{{46, 0.2 + gap_in, 11}, {47, 3, 12}}, {}});
  return project.judged_by("clearance");
}

/// A union's body of 0.3 in radius beside a plate, the build tolerance and so much clear of it.
inline std::vector<Judgement> body_beside_plate(double spare_in) {
  SmallProject project = still(from_union({}));
  Panel plate;
  plate.name = "plate";
  const double bl = 0.3 + 0.06 + spare_in;
  plate.corners = {{-5, bl, -5}, {-0.9, bl, -5}, {-0.9, bl, 5}, {-5, bl, 5}};
  plate.thickness_in = 0;
  project.project.structure.panels.push_back(plate);
  return project.judged_by("clearance");
}

inline LimitEdges of_clearance() {
  LimitEdge overlap =
      clearance("overlap", plastic, Neighbour::rod, 0, Verdict::fail, "no two things in one place");
  overlap.listed = false;  // at no gap it is too near
  const std::string arp = "SAE ARP994 / MIL-H-5440";
  const std::string borrowed = "borrowed from the figures for metal tube";
  LimitEdge mover_least =
      clearance("metal-tube-to-mover-least", metal, Neighbour::mover, 0.25, Verdict::fail, arp);
  mover_least.listed = false;  // at a quarter of an inch it is nearer than is usual
  return {
      overlap,
      clearance("metal-tube", metal, Neighbour::rod, 0.25, Verdict::fail, arp),
      clearance("metal-tube-at-support", metal, Neighbour::rod_at_support, 0.0625, Verdict::fail,
                arp),
      clearance("metal-tube-to-mover", metal, Neighbour::mover, 0.5, Verdict::warn,
                "instrument line to moving part"),
      mover_least,
      clearance("soft-tube", plastic, Neighbour::rod, 0.25, Verdict::warn, borrowed),
      clearance("soft-tube-at-support", plastic, Neighbour::rod_at_support, 0.0625, Verdict::warn,
                borrowed),
      clearance("soft-tube-to-mover", plastic, Neighbour::mover, 0.5, Verdict::warn,
                "instrument line to moving part"),
      clearance("wire", wire, Neighbour::rod, 0.0625, Verdict::warn, borrowed),
      clearance("wire-to-mover", wire, Neighbour::mover, 0.5, Verdict::fail,
                "AC 43.13-1B para 11-125"),
      clearance("cable", eighth_steel, Neighbour::rod, 0.5, Verdict::warn, "where either can move"),
      clearance("cable-at-guide", eighth_steel, Neighbour::rod_at_support, 0.25, Verdict::warn,
                "next to a support"),
      clearance("cable-to-mover", eighth_steel, Neighbour::mover, 0.5, Verdict::warn,
                "where either can move"),
      {.rule = "clearance",
       .row = "fitting-overlap",
       .limit = 0,
       .source = "no two things in one place",
       .judged = body_beside_plate},
      {.rule = "clearance",
       .row = "pulley-overlap",
       .limit = 0,
       .source = "no two things in one place",
       .judged = pulley_beside_block},
  };
}

/// The first along FS from 100 to 130, the second across it over FS 115, `gap_in` clear.
inline SmallProject crossed(const std::string& first, const std::string& second, double gap_in,
                            const std::vector<RoutePoint>& points = {}) {
  SmallProject project = straight(first, points);
  const double level = 10 + radius_in(first) + radius_in(second) + gap_in;
  project.node("left", NodeKind::bulkhead, {115, -10, level})
      .node("right", NodeKind::bulkhead, {115, 15, level});
  project.route("second", second, "left", "right");
  tighten(project);
  return project;
}

inline LimitEdge separation(const std::string& row, const std::string& first,
                            const std::string& second, double limit_in, Verdict broken,
                            const std::string& source) {
  return {.rule = "separation",
          .row = row,
          .limit = limit_in,
          .broken = broken,
          .source = source,
          .judged = [=](double spare) {
            return crossed(first, second, limit_in + spare).judged_by("separation");
          }};
}

/// A wire bundle over a line that carries vapour.
inline LimitEdge wire_to_vent(const std::string& row, double limit_in, Verdict broken,
                              const std::string& source) {
  LimitEdge edge = separation(row, wire, plastic, limit_in, broken, source);
  edge.judged = [=](double spare) {
    SmallProject project = crossed(plastic, wire, limit_in + spare);
    project.project.routes[0].system = SystemKind::vent;
    project.project.routes[0].system_name = "vent";
    return project.judged_by("separation");
  };
  return edge;
}

/// A bundle 3 in to the side of a vent line, and so much over it.
inline std::vector<Judgement> beside_vent(double height_in) {
  SmallProject project = straight(plastic, {});
  project.project.routes[0].system = SystemKind::vent;
  project.project.routes[0].system_name = "vent";
  project.node("left", NodeKind::bulkhead, {105, 3, 10 + height_in})
      .node("right", NodeKind::bulkhead, {120, 3, 10 + height_in});
  project.route("second", wire, "left", "right");
  return project.judged_by("separation");
}

/// Two tubes from one tee. From where the fitting ends, 3/4 in along one of them, it is as far to
/// the other as makes their surfaces `gap_in` apart.
inline std::vector<Judgement> parted(double gap_in) {
  const double angle = std::asin((0.25 + gap_in) / 0.75);
  SmallProject project;
  project.node("tee", NodeKind::tee, {100, 0, 10})
      .node("first", NodeKind::bulkhead, {120, 0, 10})
      .node("second", NodeKind::bulkhead, {100 + 20 * std::cos(angle), 20 * std::sin(angle), 10});
  project.route("to-first", plastic, "tee", "first");
  project.route("to-second", plastic, "tee", "second");
  return project.judged_by("separation");
}

// Metal tube: SAE ARP994, MIL-H-5440; wire to cable: FAA-H-8083-31, and 1/2 in with a sleeve AC
// 43.13-1B para 11-125 [all from memory]. Wire to flammable vapour: AC 43.13-1B CHG 1 para 11-96
// [verified]. The rest is [common practice, no source].
inline LimitEdges of_separation() {
  LimitEdge overlap =
      separation("overlap", plastic, plastic, 0, Verdict::fail, "no two things in one place");
  overlap.listed = false;  // at no gap they are too near
  LimitEdge parting =
      separation("parting", plastic, plastic, 0, Verdict::fail, "the fitting explains no more");
  parting.judged = parted;
  parting.listed = false;
  LimitEdge at_support = separation("tube-to-cable-at-support", plastic, eighth_steel, 0.5,
                                    Verdict::warn, "through full travel");
  at_support.judged = [](double spare) {
    return crossed(plastic, eighth_steel, 0.5 + spare, {support(plastic)}).judged_by("separation");
  };
  LimitEdge sleeved = separation("wire-to-sleeved-cable", wire, eighth_steel, 0.5, Verdict::fail,
                                 "AC 43.13-1B para 11-125");
  sleeved.judged = [](double spare) {
    // The sleeve of 1/4 in covers the cable from 1 in to 24 in along at all travel.
    SmallProject project = crossed(wire, eighth_steel, 0.5 + spare + 0.125 - 0.0695);
    Route& cable = project.project.routes[1];
    cable.sleeves.push_back({0.5, 24.5, 0.17, 0.25, {}});
    cable.travel = Travel{0.5, 0.5, {}};
    return project.judged_by("separation");
  };
  LimitEdge vent_least =
      wire_to_vent("wire-to-vent-least", 2, Verdict::fail, "2 in, closely clamped");
  vent_least.listed = false;  // at 2 in it is nearer than wanted
  return {overlap,
          parting,
          separation("metal-tube", metal, plastic, 0.25, Verdict::fail,
                     "SAE ARP994 / MIL-H-5440: adjacent lines"),
          separation("soft-tube", plastic, plastic, 0.25, Verdict::warn,
                     "borrowed from the figure for metal tube"),
          at_support,
          separation("tube-to-cable", plastic, eighth_steel, 1, Verdict::warn,
                     "where the line is unsupported"),
          separation("wire-to-cable", wire, eighth_steel, 3, Verdict::fail, "FAA-H-8083-31"),
          sleeved,
          vent_least,
          separation("wire-to-tube", wire, plastic, 0.25, Verdict::warn,
                     "borrowed from the figure for metal tube"),
          separation("cable-to-cable", eighth_steel, eighth_steel, 0.5, Verdict::warn,
                     "where either can move"),
          wire_to_vent("wire-to-vent", 6, Verdict::warn, "AC 43.13-1B CHG 1 para 11-96 (verified)"),
          {.rule = "separation",
           .row = "wire-over-vent",
           .limit = 0,
           .broken = Verdict::warn,
           .source = "TM 1-1500-204-23-4 item 23",
           .judged = beside_vent,
           .listed = false}};
}

inline LimitEdges all() {
  LimitEdges edges = of_clearance();
  for (const LimitEdge& each : of_separation()) edges.push_back(each);
  return edges;
}

}  // namespace linewright::gap_edges
