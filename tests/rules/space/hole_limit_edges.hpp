#pragma once
// Rows of `hole-edge`, each at its edge.

#include <string>

#include "rules/cable_project.hpp"
#include "rules/limit_edge.hpp"

namespace linewright::hole_edges {

/// A hole, and one as wide beside it with `web_in` between the two.
inline std::vector<Judgement> two_holes(double across_in, double web_in) {
  SmallProject project;
  add_frame(project, "F1", 104, across_in);
  project.project.structure.frames[0].holes.push_back(
      {"beside", Circle{{across_in + web_in, 10}, across_in}, EdgeGuard::bare, {}, {}});
  return project.judged_by("hole-edge");
}

// Geometry, and [common practice, no source]: as much sheet as a small hole is across, else 1/2 in.
inline LimitEdges all() {
  return {{.rule = "hole-edge",
           .row = "sheet-left",
           .limit = 0,
           .source = "two holes that meet are one",
           .judged = [](double spare) { return two_holes(0.375, spare); },
           .at_limit = false,
           .listed = false,
           .measured = false},
          {.rule = "hole-edge",
           .row = "beside-small-hole",
           .limit = 0.375,
           .broken = Verdict::warn,
           .source = "2 diameters from middle to middle",
           .judged = [](double spare) { return two_holes(0.375, 0.375 + spare); }},
          {.rule = "hole-edge",
           .row = "beside-wide-hole",
           .limit = 0.5,
           .broken = Verdict::warn,
           .source = "a hole of 1/2 in would need",
           .judged = [](double spare) { return two_holes(2, 0.5 + spare); }}};
}

}  // namespace linewright::hole_edges
