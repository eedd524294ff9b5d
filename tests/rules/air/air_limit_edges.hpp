#pragma once
// Rows of the rules about air lines, each at its edge.

#include <algorithm>
#include <cmath>
#include <functional>
#include <string>
#include <vector>

#include "model/angle.hpp"
#include "rules/limit_edge.hpp"
#include "rules/small_project.hpp"

namespace linewright::air_edges {

inline const std::string tube = "tube-nylon-1/4";

/// A tee in the middle and the nodes of one kind about it, left and right in turn, each on a line
/// of its own, and so many lines more that are capped.
inline SmallProject about_tee(NodeKind kind, int nodes, int capped = 0,
                              NodeKind middle = NodeKind::tee) {
  SmallProject project;
  project.node("middle", middle, {100, 0, 10});
  for (int i = 0; i < nodes + capped; ++i) {
    const std::string name = "node-" + std::to_string(i);
    project.node(name, i < nodes ? kind : NodeKind::cap,
                 {110.0 + i, i % 2 == 0 ? -10.0 : 10.0, 10});
    project.route("line-" + std::to_string(i), tube, "middle", name);
  }
  return project;
}

/// A port stated for each line that there may be: they hold no more against the node.
inline SmallProject with_ports(SmallProject project, const std::string& name) {
  for (Node& node : project.project.nodes)
    if (node.name == name) node.ports.assign(9, {"port", node.at, {1, 0, 0}, 0, {}});
  return project;
}

/// So many lines from ports to a node of one kind; of a vent, which may leave openings open.
inline SmallProject vent_lines_to(NodeKind kind, int lines) {
  SmallProject project;
  project.node("middle", kind, {100, 0, 10});
  for (int i = 0; i < lines; ++i) {
    const std::string name = "node-" + std::to_string(i);
    project.node(name, NodeKind::drain, {110.0 + i, 0, 10});
    Route& route = project.route("line-" + std::to_string(i), tube, "middle", name);
    route.system = SystemKind::vent;
    route.system_name = "vent";
  }
  return project;
}

/// What is counted is so many more than the limit; the judgement says how many.
inline LimitEdge counted(const std::string& row, int limit, Verdict broken,
                         const std::string& source, std::function<SmallProject(int)> project) {
  return {.rule = "network",
          .row = row,
          .limit = limit,
          .broken = broken,
          .source = source,
          .judged =
              [=](double spare) {
                return project(limit + static_cast<int>(spare)).judged_by("network");
              },
          .step = one_off};
}

/// An instrument with so many lines to it from the middle's.
inline SmallProject lines_to_instrument(int lines) {
  SmallProject project = about_tee(NodeKind::static_port, 2);
  project.node("altimeter", NodeKind::instrument, {60, 0, 20});
  for (int i = 0; i < lines; ++i)
    project.route("to-altimeter-" + std::to_string(i), tube, i == 0 ? "middle" : "node-0",
                  "altimeter");
  return with_ports(project, "altimeter");
}

/// Lines at a node of one kind, so many fewer than the most.
inline LimitEdge lines_at_most(const std::string& row, NodeKind kind, int limit) {
  const bool asked = kind == NodeKind::instrument;
  LimitEdge edge = counted(row, limit, asked ? Verdict::warn : Verdict::fail,
                           asked ? "one connection takes one line" : "14 CFR 23.1325",
                           [=](int lines) { return vent_lines_to(kind, 2 * limit - lines); });
  edge.listed = false;  // what has no more is judged by the openings that are left
  return edge;
}

// 14 CFR 23.1323 and 23.1325 [verified]; a port on each side, drain and instrument [common
// practice, no source].
inline LimitEdges of_network() {
  const std::string open = "14 CFR 23.1325";
  const std::string both = "14 CFR 23.1323 and 23.1325";
  LimitEdge other = counted("lines-at-other-node", 1, Verdict::fail, open, lines_to_instrument);
  other.breakable = false;  // a node without a line breaks `routes-at-node`
  LimitEdge joined = counted("pressures-joined", 0, Verdict::fail, both, [](int spare) {
    return about_tee(NodeKind::pitot_probe, std::max(0, -spare), 3);
  });
  joined.listed = false;
  LimitEdge reached =
      counted("routes-at-node", 1, Verdict::warn, "meant to be connected", lines_to_instrument);
  reached.limit.reset();
  reached.listed = false;
  LimitEdge none_there = counted("lines-at-bare-end", 0, Verdict::fail, open, [](int spare) {
    return vent_lines_to(NodeKind::horn, std::max(0, -spare));
  });
  none_there.listed = false;
  none_there.measured = false;  // there are no fewer than none
  LimitEdge sides = counted("sides-with-port", 2, Verdict::warn, "one on each side",
                            [](int ports) { return about_tee(NodeKind::static_port, ports, 1); });
  sides.measured = false;  // no aeroplane has three sides
  return {
      counted("lines-at-union", 2, Verdict::fail, open,
              [](int lines) {
                return with_ports(about_tee(NodeKind::drain, lines, 0, NodeKind::union_fitting),
                                  "middle");
              }),
      other,
      joined,
      counted("openings-reached", 1, Verdict::fail, both,
              [](int ports) { return about_tee(NodeKind::static_port, ports, 3); }),
      sides,
      counted("drains", 1, Verdict::warn, "a drain at each low point",
              [](int drains) { return about_tee(NodeKind::drain, drains, 3); }),
      counted("instruments-fed", 1, Verdict::warn, "a line that feeds nothing",
              [](int fed) { return about_tee(NodeKind::instrument, fed, 3); }),
      counted("lines-at-tee", 3, Verdict::fail, open,
              [](int lines) { return with_ports(about_tee(NodeKind::drain, lines), "middle"); }),
      lines_at_most("most-lines-at-cap", NodeKind::cap, 1),
      lines_at_most("most-lines-at-union", NodeKind::bulkhead, 2),
      lines_at_most("most-lines-at-tee", NodeKind::tee, 3),
      lines_at_most("most-lines-at-other-node", NodeKind::instrument, 1),
      none_there,
      reached};
}

/// Down 3-4-5 from the port by `depth_in`, and up again to the altimeter.
inline std::vector<Judgement> dipped(double depth_in) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {88 + depth_in * 4 / 3, 0, 10 + depth_in})
      .node("altimeter", NodeKind::instrument, {68, 0, 25});
  project.route("static", tube, "port", "altimeter", {bent({88, 0, 10}, 0)});
  project.project.attitudes = {{"level flight", 0, 0, {}}};
  return project.judged_by("drainage");
}

/// 40 in from a port to an altimeter that is `rise_in` higher.
inline std::vector<Judgement> rising(double rise_in) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {100, 0, 10})
      .node("altimeter", NodeKind::instrument, {60, 0, 10 + rise_in});
  project.route("static", tube, "port", "altimeter");
  project.project.attitudes = {{"level flight", 0, 0, {}}};
  return project.judged_by("drainage");
}

// Positive drainage: 14 CFR 23.1325(b)(1)(i), 23.1323(c) [verified]. That water which leaves the
// bore open is less grave is [common practice, no source]. A bore of 0.171 in that leans 3-4-5 is
// 0.171 · 4/5 high [calculated]. Slope toward drains: AC 43.13-1B para 12-61 c [verified]; that it
// is 1 deg [common practice, no source].
inline LimitEdges of_drainage() {
  return {{.rule = "drainage",
           .row = "water-that-closes-bore",
           .limit = 0,
           .source = "positive drainage of moisture",
           .judged = [](double spare) { return dipped(0.171 * 0.8 - spare); },
           .at_limit = false,
           .listed = false,     // water that leaves the bore open is another row's
           .measured = false},  // by its volume
          {.rule = "drainage",
           .row = "water-that-leaves-bore-open",
           .limit = 0,
           .broken = Verdict::warn,
           .source = "telling a shallow pool from one that closes the bore",
           .judged = rising,
           .listed = false,
           .measured = false},
          {.rule = "drainage",
           .row = "slope-toward-drain",
           .limit = 1,
           .broken = Verdict::warn,
           .source = "AC 43.13-1B para 12-61 c",
           .judged = [](double spare) { return rising(40 * std::tan(radians_of(1 + spare))); },
           .listed = false}};  // what has slope enough runs dry, or does not
}

/// A bore of 1 mm over 5 m; what the altimeter trails by is as its rate of climb.
inline std::vector<Judgement> trailing(double altitude_ft) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {5 / 0.0254, 0, 10})
      .node("altimeter", NodeKind::instrument, {0, 0, 10});
  project.project.nodes[1].volume_in3 = 18;
  project.line(tube).inside_diameter_in = 1 / 25.4;
  project.route("static", tube, "port", "altimeter");
  project.project.climb_ft_per_min = 1'000;
  const double at_thousand_ft = *sole(project.judged_by("lag")).value;
  project.project.climb_ft_per_min = 1'000 * altitude_ft / at_thousand_ft;
  return project.judged_by("lag");
}

inline LimitEdges all() {
  LimitEdges edges = of_network();
  for (const LimitEdge& each : of_drainage()) edges.push_back(each);
  // Half of an altimeter's smallest division [common practice, no source].
  edges.push_back({.rule = "lag",
                   .row = "altitude-trailed",
                   .limit = 10,
                   .broken = Verdict::warn,
                   .source = "half of an altimeter's smallest division",
                   .judged = [](double spare) { return trailing(10 - spare); }});
  return edges;
}

}  // namespace linewright::air_edges
