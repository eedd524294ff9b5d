#pragma once
// Rows of the rule about lines tied to each other, each at its edge.

#include <string>
#include <vector>

#include "geometry/centreline.hpp"
#include "rules/limit_edge.hpp"
#include "rules/small_project.hpp"

namespace linewright::bundle_edges {

/// Two lines of 1/4 in along FS, `gap_in` from each other, tied every `ties_in`.
inline SmallProject tied(const std::string& first, const std::string& second, double gap_in,
                         double ties_in = 4) {
  SmallProject project;
  project.node("a", NodeKind::bulkhead, {100, 0, 10}).node("b", NodeKind::bulkhead, {140, 0, 10});
  project.node("c", NodeKind::bulkhead, {100, 0.25 + gap_in, 10})
      .node("d", NodeKind::bulkhead, {140, 0.25 + gap_in, 10});
  project.route("first", first, "a", "b");
  project.route("second", second, "c", "d");
  project.project.bundles.push_back({"tunnel", {"first", "second"}, 5, 35, ties_in, {}});
  return project;
}

/// A wire tied to a cable that moves so far.
inline std::vector<Judgement> to_cable(double travel_in) {
  SmallProject project = tied("wire-1/4", "cable-7x19-1/8-steel", 0.1);
  project.project.routes[1].travel = Travel{travel_in, travel_in, {}};
  return project.judged_by("bundle");
}

/// A wire tied to a tube of a system, or to another wire.
inline std::vector<Judgement> to_tube(SystemKind system, bool wires) {
  SmallProject project = tied("wire-1/4", wires ? "wire-1/4" : "tube-nylon-1/4", 0.1);
  if (!wires) project.project.routes[1].system = system;
  return project.judged_by("bundle");
}

// 14 CFR 23.685(a), AC 43.13-1B para 11-96 and 11-158 [verified]; a wire on a pressure line and the
// reach of a tie [common practice, no source].
inline LimitEdges all() {
  const std::string rule = "bundle";
  const std::string tube = "tube-nylon-1/4";
  return {
      {.rule = rule,
       .row = "moving-control",
       .source = "14 CFR 23.685(a)",
       .judged = [](double spare) { return to_cable(std::max(0.0, -spare)); }},
      {.rule = rule,
       .row = "wire-to-vapour",
       .source = "para 11-96",
       .judged = [](double spare) { return to_tube(SystemKind::vent, spare >= 0); },
       .listed = false},
      {.rule = rule,
       .row = "wire-to-pressure",
       .broken = Verdict::warn,
       .source = "chafed wire",
       .judged = [](double spare) { return to_tube(SystemKind::static_air, spare >= 0); },
       .listed = false},
      {.rule = rule,
       .row = "overlap",
       .limit = 0,
       .source = "no two things in one place",
       .judged = [=](double spare) { return tied(tube, tube, spare).judged_by("bundle"); },
       .step = 0.01,
       .let_pass = Centreline::default_sagitta_in,
       .measured = false},
      {.rule = rule,
       .row = "beside",
       .limit = 0.5,
       .broken = Verdict::warn,
       .source = "lies beside each other",
       .judged = [=](double spare) { return tied(tube, tube, 0.5 - spare).judged_by("bundle"); }},
      {.rule = rule,
       .row = "tie-spacing",
       .limit = 12,
       .source = "para 11-158 b",
       .judged = [=](double spare) {
         return tied(tube, tube, 0, 12 - spare).judged_by("bundle");
       }}};
}

}  // namespace linewright::bundle_edges
