#pragma once
// Rows of the rules about pushrods, each at its edge.

#include <cmath>
#include <string>
#include <vector>

#include "model/angle.hpp"
#include "physics/deflection.hpp"
#include "rules/limit_edge.hpp"
#include "rules/rod_project.hpp"

namespace linewright::rod_edges {

/// A rod that stays, and one of 1 in across it, `gap_in` above its middle.
inline SmallProject still_under(double gap_in) {
  SmallProject project = rod_project(0);
  const double level = 10 + half_inch_rod_radius_in + 0.5 + gap_in;
  project.project.structure.solids.push_back(
      {"tube", Cylinder{{120, -5, level}, {120, 5, level}, 1}, {}});
  return project;
}

/// Another line across it, `gap_in` clear.
inline std::vector<Judgement> crossed_by(const std::string& line, double gap_in) {
  SmallProject project = stiff_rod(rod_project(0));
  const double level = 10 + half_inch_rod_radius_in + 0.125 + gap_in;
  project.node("left", NodeKind::bulkhead, {120, -10, level})
      .node("right", NodeKind::bulkhead, {120, 15, level});
  project.route("second", line, "left", "right");
  return project.judged_by("separation");
}

/// Its sag as a beam with pinned ends under its own weight.
inline double sag_in() {
  const SmallProject project = rod_project(0);
  const Line& rod = *project.project.catalogue.find_line(half_inch_rod);
  return pinned_beam_sag_in({.length_in = 40,
                             .weight_lb_per_in = rod.weight_lb_per_in->value,
                             .youngs_modulus_psi = rod.youngs_modulus_psi->value,
                             .second_moment_in4 = tube_second_moment_in4(0.5, 0.43)});
}

inline std::vector<Judgement> travelled(double from_arm_in, double to_arm_in, double travel_in) {
  return rod_project(travel_in, from_arm_in, to_arm_in).judged_by("rod-travel");
}

/// A rod that stays, with both bolts leaning 10 degrees from square to it.
inline std::vector<Judgement> leaning(double takes_deg) {
  SmallProject project = rod_project(0);
  for (Node& node : project.project.nodes)
    node.arm->axis = {std::sin(radians_of(10)), std::cos(radians_of(10)), 0};
  project.project.routes[0].rod_end_angle_deg = takes_deg;
  return project.judged_by("rod-travel");
}

// Bundle to a moving control: AC 43.13-1B para 11-125 [from memory]. 14 CFR 23.685(a) [verified].
// Gaps and lever [common practice, no source]. The rest is geometry.
inline LimitEdges all() {
  const std::string rule = "rod-travel";
  return {
      {.rule = "clearance",
       .row = "rod",
       .limit = 0.5,
       .broken = Verdict::warn,
       .source = "where either can move",
       .judged =
           [](double spare) { return stiff_rod(still_under(0.5 + spare)).judged_by("clearance"); }},
      {.rule = "chafe",
       .row = "rod-rubs",
       .limit = sag_in(),
       .source = "14 CFR 23.685(a)",
       .judged = [](double spare) { return still_under(sag_in() + spare).judged_by("chafe"); },
       .listed = false},  // a pass rests on what no shape can pass, which is the same
      {.rule = "separation",
       .row = "wire-to-rod",
       .limit = 0.5,
       .source = "AC 43.13-1B para 11-125",
       .judged = [](double spare) { return crossed_by("wire-1/4", 0.5 + spare); }},
      {.rule = "separation",
       .row = "line-to-rod",
       .limit = 0.5,
       .broken = Verdict::warn,
       .source = "where either can move",
       .judged = [](double spare) { return crossed_by("tube-nylon-1/4", 0.5 + spare); }},
      {.rule = rule,
       .row = "arm-reaches",
       .source = "an end goes round its arm",
       .judged = [](double spare) { return travelled(2, 4, 2 - spare); },
       .listed = false},
      {.rule = rule,
       .row = "over-centre",
       .source = "a rod keeps its length",
       .judged = [](double spare) { return travelled(4, 2, 1.95 - spare); },
       .step = 0.1,
       .listed = false},
      // An arm of 2 in turned 60 degrees is 30 off the line of the rod.
      {.rule = rule,
       .row = "lever",
       .limit = 30,
       .broken = Verdict::warn,
       .source = "little lever",
       .judged =
           [](double spare) { return travelled(2, 2, 2 * std::sin(radians_of(60 - spare))); }},
      {.rule = rule,
       .row = "rod-end-angle",
       .source = "rod_end_angle",
       .judged = [](double spare) { return leaning(10 + spare); }},
  };
}

}  // namespace linewright::rod_edges
