#pragma once
// Rows of `support-mount` about bulkhead unions, each at its edge.

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "model/angle.hpp"
#include "rules/limit_edge.hpp"
#include "rules/space/bulkhead_project.hpp"

namespace linewright::bulkhead_edges {

inline std::vector<Judgement> in_hole_of(double diameter_in, bool has_size = true,
                                         const std::string& thread = {}) {
  BulkheadProject project{.holes = hole_about_union(diameter_in), .thread = thread};
  if (!has_size) project.size.clear();
  return project.judged();
}

inline std::vector<Judgement> aslant_by(double angle_deg) {
  const double angle_rad = radians_of(angle_deg);
  return BulkheadProject{.size = ", fitting: through-1/4, direction: [" +
                                 std::to_string(1e3 * std::cos(angle_rad)) + ", 0, " +
                                 std::to_string(1e3 * std::sin(angle_rad)) + "]"}
      .judged();
}

/// In a hole, or so far beside one.
inline std::vector<Judgement> beside_hole(double away_in) {
  return BulkheadProject{.holes = "[{name: H, centre: [" +
                                  std::to_string(7.0 / 32 + std::max(-7.0 / 32, away_in)) +
                                  ", 10], diameter: 7/16}]"}
      .judged();
}

// Geometry. That the cover is 1/16 in, a hole of a union without a size four times its line, and a
// drawing true to 10 degrees is [common practice, no source].
inline LimitEdges all() {
  const std::string rule = "support-mount";
  return {{.rule = rule,
           .row = "bulkhead-hole",
           .limit = 0,
           .source = "what is fitted through a sheet",
           .judged = [](double spare) { return beside_hole(spare >= 0 ? -1 : -spare); },
           .listed = false},
          {.rule = rule,
           .row = "bulkhead-room",
           .limit = 0,
           .source = "the line goes on in the union",
           .judged = [](double spare) { return in_hole_of(0.25 + 2 * spare, true, "0.2"); },
           .listed = false},
          {.rule = rule,
           .row = "bulkhead-thread",
           .limit = -0.005,
           .source = "the thread goes through the hole",
           .judged = [](double spare) { return in_hole_of(0.43 + spare, true, "0.435"); },
           .listed = false},
          {.rule = rule,
           .row = "bulkhead-thread-taken",
           .broken = Verdict::unknown,
           .source = "a table of AN sizes",
           .judged = [](double spare) { return in_hole_of(0.4325 + spare); },
           .listed = false},
          {.rule = rule,
           .row = "bulkhead-held",
           .limit = 0,
           .source = "what does not cover the edge",
           .judged = [](double spare) { return in_hole_of(0.625 - 2 * spare); },
           .at_limit = false,
           .listed = false},
          {.rule = rule,
           .row = "bulkhead-cover",
           .limit = 0.0625,
           .broken = Verdict::warn,
           .source = "across the corners of its nut",
           .judged = [](double spare) { return in_hole_of(0.5 - 2 * spare); }},
          {.rule = rule,
           .row = "bulkhead-hole-width",
           .limit = 1,
           .broken = Verdict::warn,
           .source = "two to four times as wide",
           .judged = [](double spare) { return in_hole_of(1 - spare, false); }},
          {.rule = rule,
           .row = "bulkhead-square",
           .limit = 10,
           .broken = Verdict::warn,
           .source = "a drawing may be so rough",
           .judged = [](double spare) { return aslant_by(10 - spare); },
           .listed = false},
          {.rule = rule,
           .row = "bulkhead-aslant",
           .limit = 20,
           .source = "off the sheet at one side",
           .judged = [](double spare) { return aslant_by(20 - spare); },
           .at_limit = false,
           .listed = false}};
}

}  // namespace linewright::bulkhead_edges
