#pragma once
// Rows of the rules about control cables, each at its edge. A 1/8 in cable may be 0.139 in across
// and breaks at 2,000 lb (AC 43.13-1B Table 7-3 [verified]).

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "lines/cable_friction.hpp"
#include "rules/cable_project.hpp"
#include "rules/limit_edge.hpp"
#include "rules/rod_project.hpp"

namespace linewright::cable_edges {

inline constexpr double degree = std::numbers::pi / 180;

// 14 CFR 23.689(a)(1), (f) [verified].
inline LimitEdges of_cable_size() {
  return {{.rule = "cable-size",
           .row = "primary-cable",
           .limit = 0.125,
           .source = "14 CFR 23.689(a)(1)",
           .judged =
               [](double spare) {
                 SmallProject project = cable_project();
                 the_line(project).outside_diameter_in = 0.125 + spare;
                 return project.judged_by("cable-size");
               }},
          {.rule = "cable-size",
           .row = "secondary-cable",
           .source = "14 CFR 23.689(f)",
           .judged =
               [](double spare) {
                 SmallProject project = cable_project();
                 the_route(project).primary = false;
                 the_route(project).control = "tab";
                 the_line(project).outside_diameter_in = spare;
                 return project.judged_by("cable-size");
               },
           .breakable = false},
          {.rule = "cable-size",
           .row = "primary-by-its-name",
           .limit = 0.125,
           .broken = Verdict::warn,
           .source = "whatever the file says",
           .judged = [](double spare) {
             SmallProject project = cable_project();
             the_route(project).primary = false;
             the_line(project).outside_diameter_in = 0.125 + spare;
             return project.judged_by("cable-size");
           }}};
}

/// A ring of `bore_in` about the middle of 100 in of cable that sags by w L² / (8 T), 0.05 in.
inline constexpr double sag_in = 0.05;
inline std::vector<Judgement> through_ring(double bore_in) {
  SmallProject project = cable_project();
  FreeFairlead free;
  free.fairlead = held({50, 0, 10}, HoldKind::fairlead);
  free.fairlead.bore_in = bore_in;
  the_route(project).free_fairleads.push_back(free);
  set_tension(project, 50);
  the_line(project).weight_lb_per_in->value = 0.002;
  return project.judged_by("fairlead-angle");
}

inline std::vector<Judgement> turned_in_fairlead(double turn_deg) {
  const double turn = turn_deg * degree;
  return cable_project({held({50, 0, 10}, HoldKind::fairlead)},
                       {50 + 50 * std::cos(turn), 50 * std::sin(turn), 10})
      .judged_by("fairlead-angle");
}

// 14 CFR 23.689(c) [verified]; rings are geometry [calculated], and for what moves [common
// practice, no source].
inline LimitEdges of_fairlead_angle() {
  return {{.rule = "fairlead-angle",
           .row = "turn-in-fairlead",
           .limit = 3,
           .source = "14 CFR 23.689(c)",
           .judged = [](double spare) { return turned_in_fairlead(3 - spare); }},
          {.rule = "fairlead-angle",
           .row = "free-as-drawn",
           .limit = 0,
           .source = "no two things in one place",
           .judged = [](double spare) { return through_ring(0.139 + 2 * spare); },
           .listed = false},  // it has no room to move
          {.rule = "fairlead-angle",
           .row = "free-as-it-moves",
           .limit = sag_in,
           .broken = Verdict::warn,
           .source = "a guide that the cable touches wears",
           .judged = [](double spare) { return through_ring(0.139 + 2 * (sag_in + spare)); }}};
}

/// Rigged so, without a change of temperature unless one is set.
inline SmallProject rigged(double rigged_lbf, std::optional<double> limit_load_lbf) {
  SmallProject project = cable_project();
  set_tension(project, rigged_lbf, limit_load_lbf);
  return project;
}

/// 1e-5 per degF less than the airframe at 1e5 lbf: 1 lbf a degree, over 50 degrees of cold.
inline std::vector<Judgement> cooled(double rigged_lbf) {
  SmallProject project = rigged(rigged_lbf, 200);
  project.project.temperature = {20, 70, 70};
  the_line(project).expansion_per_degf->value = airframe_expansion_per_degf - 1e-5;
  the_line(project).axial_stiffness_lbf->value = 1e5;
  return project.judged_by("cable-tension");
}

inline SmallProject levered(const std::string& control, double ratio,
                            std::optional<double> force_lbf, std::optional<double> limit_load_lbf) {
  SmallProject project = rigged(60, limit_load_lbf);
  the_route(project).control = control;
  the_route(project).lever = ControlLever{ratio, force_lbf, {}};
  return project;
}

inline std::vector<Judgement> paired(double cables) {
  SmallProject project = rigged(60, 200);
  for (int i = 1; i < cables; ++i) {
    Route next = the_route(project);
    next.name = "rudder-" + std::to_string(i);
    project.project.routes.push_back(next);
  }
  return project.judged_by("cable-tension");
}

/// What a cable of 2,000 lb bears at the limit by the factor 1.5: the pull of the most that a pilot
/// counts for on the control, by the lever.
inline LimitEdge most_force(const std::string& control, double most_lbf) {
  return {
      .rule = "cable-tension",
      .row = control + "-most",
      .limit = 2000 / 1.5,
      .source = "14 CFR 23.303",
      .judged =
          [=](double spare) {
            const double ratio = (2000 / 1.5 - spare) / most_lbf;
            return levered(control, ratio, std::nullopt, std::nullopt).judged_by("cable-tension");
          },
      .cited = "safety-factor"};
}

inline LimitEdge least_force(const std::string& control, double least_lbf) {
  return {.rule = "cable-tension",
          .row = control + "-least",
          .limit = least_lbf,
          .source = "14 CFR 23.397(b)",
          .judged = [=](double spare) {
            return levered(control, 1, least_lbf + spare, std::nullopt).judged_by("cable-tension");
          }};
}

/// The same two of a wheel.
inline SmallProject wheeled(const std::string& control, double ratio,
                            std::optional<double> force_lbf) {
  SmallProject project = levered(control, ratio, force_lbf, std::nullopt);
  the_route(project).worked_by = ControlGrip::wheel;
  return project;
}

inline LimitEdge most_wheel_force(const std::string& control, double most_lbf) {
  LimitEdge edge = most_force(control, most_lbf);
  edge.row = control + "-wheel-most";
  edge.judged = [=](double spare) {
    return wheeled(control, (2000 / 1.5 - spare) / most_lbf, std::nullopt)
        .judged_by("cable-tension");
  };
  return edge;
}

inline LimitEdge least_wheel_force(const std::string& control, double least_lbf) {
  LimitEdge edge = least_force(control, least_lbf);
  edge.row = control + "-wheel-least";
  edge.judged = [=](double spare) {
    return wheeled(control, 1, least_lbf + spare).judged_by("cable-tension");
  };
  return edge;
}

// 14 CFR 23.689(a)(2), 23.397(b) [verified], 23.303 [from memory]; the proof load of swaged ends
// [verified, secondary: study page on AC 43.13-1B]; that a cable has another to bring it back, and
// what structure gives [common practice, no source].
inline LimitEdges of_cable_tension() {
  const std::string rule = "cable-tension";
  return {{.rule = rule,
           .row = "taut",
           .limit = 0,
           .source = "14 CFR 23.689(a)(2)",
           .judged = [](double spare) { return cooled(50 + spare); }},
          {.rule = rule,
           .row = "safety-factor",
           .limit = 2000 / 1.5,
           .source = "14 CFR 23.303",
           .judged = [=](double spare) { return rigged(60, 2000 / 1.5 - spare).judged_by(rule); }},
          {.rule = rule,
           .row = "proved-share",
           .limit = 1200,
           .source = "the load that swaged ends are proved to",
           .judged = [=](double spare) { return rigged(1200 - spare, 200).judged_by(rule); }},
          {.rule = rule,
           .row = "covers-pilot",
           .limit = 300,
           .source = "14 CFR 23.397(b)",
           .judged =
               [=](double spare) {
                 return levered("rudder", 1.5, std::nullopt, 300 + spare).judged_by(rule);
               }},
          {.rule = rule,
           .row = "cables-of-a-control",
           .limit = 2,
           .broken = Verdict::warn,
           .source = "a cable pulls one way",
           .judged = [](double spare) { return paired(2 + spare); },
           .step = one_off,
           .listed = false},
          // 50 lbf over 200 lbf/in.
          {.rule = rule,
           .row = "airframe-gives",
           .limit = 0.25,
           .broken = Verdict::warn,
           .source = "would be seen to move while the cable is rigged",
           .judged =
               [=](double spare) {
                 SmallProject project = rigged((0.25 - spare) * 200, 200);
                 the_route(project).airframe_stiffness_lbf_per_in = 200;
                 return project.judged_by(rule);
               },
           .listed = false},
          most_force("rudder", 200),
          least_force("rudder", 150),
          most_force("elevator", 167),
          least_force("elevator", 100),
          most_force("aileron", 67),
          least_force("aileron", 40),
          most_wheel_force("elevator", 200),
          least_wheel_force("elevator", 100),
          most_wheel_force("aileron", 100),
          least_wheel_force("aileron", 80)};
}

/// 100 in of 1000 lbf/in, rigged to 40 lbf, pulled by 200: 0.16 in of stretch beside a slack cable.
inline std::vector<Judgement> stretched(double half_travel_in) {
  SmallProject project = rigged(40, 200);
  the_line(project).axial_stiffness_lbf->value = 1e5;
  set_travel(project, 2 * half_travel_in, 4 * half_travel_in);
  return project.judged_by("control-feel");
}

/// A quarter turn in a fairlead, rigged so that so much is felt by a lever of 2.
inline LimitEdge friction(const std::string& control, double most_lbf) {
  return {
      .rule = "control-feel",
      .row = control + "-friction",
      .limit = most_lbf,
      .broken = Verdict::warn,
      .source = "small corrections are lost in more friction",
      .judged = [=](double spare) {
        SmallProject project = cable_project({held({50, 0, 10}, HoldKind::fairlead)}, {50, 40, 10});
        const double felt = (std::exp(fairlead_friction * 90 * degree) - 1) / 2;
        the_route(project).control = control;
        the_route(project).lever = ControlLever{2, {}, {}};
        set_tension(project, (most_lbf - spare) / felt);
        return project.judged_by("control-feel");
      }};
}

/// A second cable beside a first of 100 lbf that travels 1 in, its arm on the same shaft.
inline std::vector<Judgement> on_one_shaft(double times_travel, double times_tension) {
  SmallProject project = cable_project();
  set_travel(project, 0.5, 0.5);
  set_tension(project, 100);
  project.node("pedal-2", NodeKind::pedal, {0, 3, -10})
      .node("horn-2", NodeKind::horn, {100, 3, -10});
  project.project.nodes[1].arm = Arm{{100, 0, 0}, {0, 1, 0}};
  project.project.nodes[3].arm = Arm{{100, 3, 0}, {0, 1, 0}};
  Route& second = project.route("rudder-right", eighth_steel, "pedal-2", "horn-2");
  second.control = "rudder";
  second.travel = Travel{0.5 * times_travel, 0.5 * times_travel, {}};
  second.tension = Tension{100 * times_tension, {}, {}};
  return project.judged_by("control-feel");
}

/// The same on the other side of the shaft, or on one side with the first.
inline std::vector<Judgement> pulled_back_or_not(double spare) {
  SmallProject project = cable_project();
  set_travel(project, 0.5, 0.5);
  const double wl = spare < 0 ? 10 : -10;
  project.node("pedal-2", NodeKind::pedal, {0, 3, wl}).node("horn-2", NodeKind::horn, {100, 3, wl});
  project.project.nodes[1].arm = Arm{{100, 0, 0}, {0, 1, 0}};
  project.project.nodes[3].arm = Arm{{100, 3, 0}, {0, 1, 0}};
  Route& second = project.route("rudder-right", eighth_steel, "pedal-2", "horn-2");
  second.control = "rudder";
  second.travel = Travel{0.5, 0.5, {}};
  return project.judged_by("control-feel");
}

/// Two rods between the same two shafts, the second on the other side of both, or of one.
inline std::vector<Judgement> turned_alike_or_not(double spare) {
  SmallProject project = rod_project(1);
  project.node("bellcrank-2", NodeKind::horn, {100, 3, 4})
      .node("horn-2", NodeKind::horn, {140, 3, spare < 0 ? 10.0 : 4.0});
  project.project.nodes[2].arm = Arm{{100, 3, 7}, {0, 1, 0}};
  project.project.nodes[3].arm = Arm{{140, 3, 7}, {0, 1, 0}};
  Route& second = project.route("second-rod", half_inch_rod, "bellcrank-2", "horn-2");
  second.travel = Travel{1, 1, {}};
  for (Route& route : project.project.routes) route.system = SystemKind::rod;
  return project.judged_by("control-feel");
}

inline LimitEdge of_shaft(const std::string& row, const std::string& source,
                          std::vector<Judgement> (*judged)(double spare)) {
  return {.rule = "control-feel",
          .row = row,
          .source = source,
          .judged = judged,
          .step = one_off,
          .listed = false,
          .measured = false};
}

inline std::vector<Judgement> moves_or_not(double spare) {
  SmallProject project = cable_project();
  set_travel(project, spare < 0 ? 0 : 1, 0);
  return project.judged_by("control-feel");
}

// [Common practice, no source.]
inline LimitEdges of_control_feel() {
  return {{.rule = "control-feel",
           .row = "travel-lost",
           .broken = Verdict::warn,
           .source = "a control that still moves its surface at the limit",
           .judged = [](double spare) { return stretched(0.16 + spare); }},
          friction("rudder", 7),
          friction("elevator", 3),
          friction("aileron", 2),
          {.rule = "control-feel",
           .row = "control-moves",
           .broken = Verdict::warn,
           .source = "a cable that works a control moves with it",
           .judged = moves_or_not,
           .step = one_off,
           .listed = false,
           .measured = false},
          {.rule = "control-feel",
           .row = "travels-of-a-pair",
           .limit = 1.25,
           .broken = Verdict::warn,
           .source = "two cables on one shaft turn it alike",
           .judged = [](double spare) { return on_one_shaft(1.25 - spare, 1); }},
          {.rule = "control-feel",
           .row = "tensions-of-a-pair",
           .limit = 1.25,
           .broken = Verdict::warn,
           .source = "two cables on one shaft hold it still",
           .judged = [](double spare) { return on_one_shaft(1, 1.25 - spare); }},
          of_shaft("pulled-back", "a cable only pulls", pulled_back_or_not),
          of_shaft("turned-alike", "what turns one shaft two ways locks it", turned_alike_or_not)};
}

inline LimitEdges all() {
  LimitEdges edges;
  for (const LimitEdges& some :
       {of_cable_size(), of_fairlead_angle(), of_cable_tension(), of_control_feel()})
    edges.insert(edges.end(), some.begin(), some.end());
  return edges;
}

}  // namespace linewright::cable_edges
