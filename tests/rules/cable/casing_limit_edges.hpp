#pragma once
// Rows about push-pull controls in their casings, each at its edge.

#include <cmath>
#include <string>
#include <vector>

#include "model/angle.hpp"
#include "rules/casing_project.hpp"
#include "rules/limit_edge.hpp"

namespace linewright::casing_edges {

/// A round bar across the wire, `gap_in` above it, at so much beyond the casing's end at FS 140.
/// The wire comes 4 in out there.
inline std::vector<Judgement> wire_under_bar(double beyond_in, double bar_in, double gap_in) {
  SmallProject project = casing_project();
  const double level = 10 + casing_radius_in + bar_in / 2 + gap_in;
  project.project.structure.solids.push_back(
      {"bar", Cylinder{{140 + beyond_in, -5, level}, {140 + beyond_in, 5, level}, bar_in}, {}});
  return project.judged_by("clearance");
}

/// Another line across it at a station, `gap_in` clear. Both may be 1/4 in across.
inline std::vector<Judgement> crossed_by(const std::string& line, double station, double gap_in) {
  SmallProject project = casing_project();
  const double level = 10 + casing_radius_in + 0.125 + gap_in;
  project.node("left", NodeKind::bulkhead, {station, -10, level})
      .node("right", NodeKind::bulkhead, {station, 15, level});
  project.route("second", line, "left", "right");
  return project.judged_by("separation");
}

inline std::vector<Judgement> with_clamps(double count) {
  std::vector<RoutePoint> points{corner({120, 0, 10})};
  for (int i = 0; i < static_cast<int>(count); ++i) points.push_back(clamped({121.0 + i, 0, 10}));
  return hanging_casing(points).judged_by("casing-ends");
}

/// A pin at FS 143 on an arm of 2 in that stands on an axis along BL under it.
inline SmallProject on_arm(Travel travel) {
  SmallProject project = casing_project();
  throttle(project).travel = travel;
  throttle(project).run_out->to_arm = Arm{{143, 0, 8}, {0, 1, 0}};
  return project;
}

/// Aft travel at which the wire leaves the casing's line by so much. From the casing's end to the
/// pivot it is √13 in, at an angle γ = atan(2/3) under that line; the pin is 2 in from the pivot,
/// so that L² − 2 L √13 cos(γ − θ) + 9 = 0, of which the larger L is the wire pushed out.
inline double aft_travel_to_in(double angle_deg) {
  const double along = std::sqrt(13) * std::cos(std::atan2(2, 3) - radians_of(angle_deg));
  return along + std::sqrt(along * along - 9) - 3;
}

inline std::vector<Judgement> turned_off(double angle_deg, std::optional<double> stated_deg = {}) {
  SmallProject project = on_arm({0, aft_travel_to_in(angle_deg), {}});
  throttle(project).run_out->swivel_deg = stated_deg;
  return project.judged_by("casing-ends");
}

// Wires to a moving control: AC 43.13-1B para 11-125 [from memory]. Gaps, the clamp's distance and
// the swivel's angle [common practice, no source]. The rest is geometry and statics.
inline LimitEdges all() {
  const std::string rule = "casing-ends";
  return {
      {.rule = "clearance",
       .row = "run-out",
       .limit = 0.25,
       .broken = Verdict::warn,
       .source = "borrowed from the figures for metal tube",
       .judged = [](double spare) { return wire_under_bar(2.5, 1, 0.25 + spare); }},
      {.rule = "clearance",
       .row = "run-out-at-end",
       .limit = 0.0625,
       .broken = Verdict::warn,
       .source = "borrowed from the figures for metal tube",
       .judged = [](double spare) { return wire_under_bar(0.6, 0.1, 0.0625 + spare); }},
      {.rule = "separation",
       .row = "line-to-casing",
       .limit = 0.25,
       .broken = Verdict::warn,
       .source = "borrowed from the figure for metal tube",
       .judged = [](double spare) { return crossed_by("tube-nylon-1/4", 120, 0.25 + spare); }},
      {.rule = "separation",
       .row = "wire-to-run-out",
       .limit = 0.5,
       .source = "AC 43.13-1B para 11-125",
       .judged = [](double spare) { return crossed_by("wire-1/4", 143, 0.5 + spare); }},
      {.rule = "separation",
       .row = "line-to-run-out",
       .limit = 0.5,
       .broken = Verdict::warn,
       .source = "where either can move",
       .judged = [](double spare) { return crossed_by("tube-nylon-1/4", 143, 0.5 + spare); }},
      {.rule = rule,
       .row = "anchored",
       .limit = 1,
       .source = "slides instead of its wire",
       .judged = [](double spare) { return with_clamps(1 + spare); },
       .step = one_off,
       .listed = false},
      {.rule = rule,
       .row = "clamped-end",
       .limit = 2,
       .broken = Verdict::warn,
       .source = "bends a longer tail aside",
       .judged =
           [](double spare) {
             return hanging_casing({clamped({101, 0, 10}), clamped({138 + spare, 0, 10})})
                 .judged_by("casing-ends");
           }},
      {.rule = rule,
       .row = "stays-out",
       .limit = 0,
       .source = "jams on the casing",
       .judged =
           [](double spare) {
             SmallProject project = casing_project();
             throttle(project).run_out->to_in = 1 + spare;
             return project.judged_by("casing-ends");
           }},
      // The pin comes no farther from the casing than √13 + 2 in.
      {.rule = rule,
       .row = "arm-follows",
       .source = "a pin goes round its arm",
       .judged =
           [](double spare) {
             return on_arm({0, std::sqrt(13) - 1 - spare, {}}).judged_by("casing-ends");
           },
       .listed = false},
      {.rule = rule,
       .row = "swivel",
       .limit = 8,
       .broken = Verdict::warn,
       .source = "ends that swivel take so much",
       .judged = [](double spare) { return turned_off(8 - spare); }},
      {.rule = rule,
       .row = "stated-swivel",
       .source = "the run_out's swivel",
       .judged = [](double spare) { return turned_off(12, 12 + spare); }},
  };
}

}  // namespace linewright::casing_edges
