#pragma once
// Rows of `as-built`, each at its edge.

#include <string>

#include "lines/as_built.hpp"
#include "rules/limit_edge.hpp"

namespace linewright::built_edges {

inline Measurement measure() {
  Measurement measured;
  measured.route = "tube";
  measured.on = "2026-11-20";
  measured.by = "AB";
  return measured;
}

/// A tube along FS over a box 1/2 in below it, of which one thing was measured.
inline std::vector<Judgement> measured(const Measurement& one) {
  SmallProject project;
  project.node("forward", NodeKind::bulkhead, {100, 0, 10})
      .node("aft", NodeKind::bulkhead, {130, 0, 10});
  project.route("tube", "tube-aluminium-1/4", "forward", "aft", {clamped({115, 0, 10})});
  project.project.structure.solids.push_back(
      {"box", Box{{104, -5, 5}, {110, 5, 10 - 0.125 - 0.5}}, {}});
  project.project.build_tolerance_in = 0.06;
  project.project.measuring_tolerance_in = 0.03;
  project.project.built = {one};
  take_measured(project.project);
  return project.judged_by("as-built");
}

inline std::vector<Judgement> off_by(double off_in) {
  Measurement one = measure();
  one.of = 0;
  one.at = Vec3{115, off_in, 10};
  return measured(one);
}

inline std::vector<Judgement> gap_off_by(double off_in) {
  Measurement one = measure();
  one.distance_in = 7;
  one.gap_in = 0.5 + off_in;
  one.to = "box";
  return measured(one);
}

// [common practice, no source], and arithmetic.
inline LimitEdges all() {
  return {{.rule = "as-built",
           .row = "slip-of-the-tape",
           .limit = 1,
           .broken = Verdict::warn,
           .source = "misread, or redrawn",
           .judged = [](double spare) { return off_by(1 - spare); }},
          {.rule = "as-built",
           .row = "gap-agrees",
           .limit = 0.09,
           .broken = Verdict::warn,
           .source = "what the tolerances of both explain",
           .judged = [](double spare) { return gap_off_by(0.09 - spare); }}};
}

}  // namespace linewright::built_edges
