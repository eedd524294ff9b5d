#pragma once
// Rows of the rule about pulleys, each at its edge.

#include <cmath>
#include <functional>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include "rules/cable_project.hpp"
#include "rules/limit_edge.hpp"

namespace linewright::pulley_edges {

inline constexpr double degree = std::numbers::pi / 180;

/// A square turn over a pulley whose spindle leans by `lean_deg` along the leg that runs aft.
inline std::vector<Judgement> leaning(double lean_deg, bool primary) {
  const Vec3 axis{std::sin(lean_deg * degree), 0, std::cos(lean_deg * degree)};
  SmallProject project = cable_project({pulley_at({50, 0, 10}, 3, axis)}, {50, 40, 10});
  the_route(project).primary = primary;
  return project.judged_by("pulley");
}

/// A horn 38.75 in from where its leg leaves a groove of 2.5 in, on an arm of 5 in that turns in
/// the upright plane. Along a leg that falls by an angle u the end is t in away where t² - 2 t
/// (38.75 cos u + 5 sin u) + 38.75² = 0.
inline std::vector<Judgement> swung(double off_deg, bool primary) {
  SmallProject project = cable_project({pulley_at({60, 0, 10}, 2.5, {0, 0, 1})}, {60, 40, 10});
  project.project.nodes.back().arm = Arm{{60, 40, 5}, {1, 0, 0}};
  the_route(project).primary = primary;
  const double half = 38.75 * std::cos(off_deg * degree) + 5 * std::sin(off_deg * degree);
  const double travel = 38.75 - (half - std::sqrt(half * half - 38.75 * 38.75));
  set_travel(project, travel, travel);
  return project.judged_by("pulley");
}

/// A quarter turn over a pulley of so many cable diameters.
inline std::vector<Judgement> sized(double diameters, double load_lbf) {
  SmallProject project =
      cable_project({pulley_at({50, 0, 10}, 0.125 * diameters, {0, 0, 1})}, {50, 40, 10});
  set_tension(project, 10, load_lbf);
  return project.judged_by("pulley");
}

/// A pulley of 3 in groove that turns the cable by `turn_deg`.
inline std::vector<Judgement> guarded(double turn_deg, double guards, double gap_in) {
  const double turn = turn_deg * degree;
  SmallProject project = cable_project({pulley_at({50, 0, 10}, 3, {0, 0, 1})},
                                       {50 + 40 * std::cos(turn), 40 * std::sin(turn), 10});
  the_route(project).points[0].guards = static_cast<int>(guards);
  the_route(project).points[0].guard_gap_in = gap_in;
  return project.judged_by("pulley");
}

/// A guard beside flanges that stand 0.05 in out of the groove, so much clear of a cable that is
/// 0.139 in thick at the most.
inline std::vector<Judgement> beside_the_cable(double spare) {
  SmallProject project = cable_project({pulley_at({50, 0, 10}, 3, {0, 0, 1})}, {50, 40, 10});
  RoutePoint& point = the_route(project).points[0];
  point.guards = 2;
  point.outside_in = 3.1;
  point.guard_gap_in = project.line(eighth_steel).largest_radius_in() - 0.05 + spare;
  return project.judged_by("pulley");
}

inline LimitEdge of_pulley(const std::string& row, double limit, const std::string& source,
                           std::function<std::vector<Judgement>(double spare)> judged) {
  return {
      .rule = "pulley", .row = row, .limit = limit, .source = source, .judged = std::move(judged)};
}

inline LimitEdge guard_clear() {
  LimitEdge edge =
      of_pulley("guard-clear-of-cable", 0, "no two things in one place", beside_the_cable);
  edge.listed = false;
  return edge;
}

inline LimitEdge guard_number(const std::string& row, double limit, const std::string& source,
                              double turn_deg) {
  LimitEdge edge = of_pulley(row, limit, source,
                             [=](double spare) { return guarded(turn_deg, limit + spare, 0.05); });
  edge.step = one_off;
  return edge;
}

// MIL-F-18372 [verified]: plane 3.1.1.17.8, guards 3.1.1.17.13, sizes the table above 3.1.1.17.8 at
// 1, 10 and 20 % of 2,000 lb. Guards at all: 14 CFR 23.689(b) [verified]. Their gap [calculated].
inline LimitEdges all() {
  const std::string primary = "3.1.1.17.8 (a)";
  const std::string other = "3.1.1.17.8 (b)";
  const std::string sizes = "table above para 3.1.1.17.8";
  return {
      of_pulley("plane-primary", 1, primary, [](double spare) { return leaning(1 - spare, true); }),
      of_pulley("plane-other", 2, other, [](double spare) { return leaning(2 - spare, false); }),
      of_pulley("plane-primary-swung", 2, "(a): where the cable travels sideways",
                [](double spare) { return swung(2 - spare, true); }),
      of_pulley("plane-other-swung", 3, "(b): where the cable travels sideways",
                [](double spare) { return swung(3 - spare, false); }),
      of_pulley("size-at-1-per-cent", 10, sizes,
                [](double spare) { return sized(10 + spare, 20); }),
      of_pulley("size-at-10-per-cent", 20, sizes,
                [](double spare) { return sized(20 + spare, 200); }),
      of_pulley("size-at-20-per-cent", 28, sizes,
                [](double spare) { return sized(28 + spare, 400); }),
      guard_number("guards-at-pulley", 1, "14 CFR 23.689(b)", 10),
      guard_number("guards-at-tangent-points", 2, "near each tangent point", 90),
      guard_number("guards-past-quarter-turn", 3, "over 90 deg", 91),
      of_pulley("guard-gap", 0.125, "a cable slips out by a gap as wide as itself",
                [](double spare) { return guarded(90, 2, 0.125 - spare); }),
      guard_clear()};
}

}  // namespace linewright::pulley_edges
