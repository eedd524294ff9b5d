#pragma once
// Rows of the rules about what is on a cable, each at its edge. A 1/8 in cable may be 0.139 in
// across (AC 43.13-1B Table 7-3 [verified]).

#include <cmath>
#include <numbers>
#include <optional>
#include <string>
#include <vector>

#include "rules/cable_project.hpp"
#include "rules/limit_edge.hpp"

namespace linewright::attached_edges {

inline constexpr double degree = std::numbers::pi / 180;

/// One attachment of 1 in by 0.4 in on a cable that neither moves nor stretches.
inline SmallProject with_attached(const std::string& kind, double at_in,
                                  const std::vector<RoutePoint>& points, double length_in = 1) {
  SmallProject project = cable_project(points);
  the_route(project).attached.push_back({kind, at_in, length_in, 0.4, {}});
  set_travel(project, 0, 0);
  set_tension(project, 60, 200);
  the_line(project).axial_stiffness_lbf->value = 1e15;
  return project;
}

inline std::vector<Judgement> attached(const std::string& kind, double at_in,
                                       const std::vector<RoutePoint>& points = {}) {
  return with_attached(kind, at_in, points).judged_by("attachment-travel");
}

/// In the middle of a hole, `room_in` to its edge all round.
inline std::vector<Judgement> through_hole(double room_in) {
  SmallProject project = with_attached("turnbuckle", 50, {});
  add_frame(project, "F1", 50, 0.4 + 2 * room_in);
  return project.judged_by("attachment-travel");
}

/// One of 4 to 6 in, drawn so far from its middle.
inline std::vector<Judgement> drawn_off(double off_in) {
  SmallProject project = with_attached("turnbuckle", 50, {}, 5 + off_in);
  the_route(project).attached[0].adjustment = Adjustment{4, 6};
  return project.judged_by("attachment-travel");
}

// AC 43.13-1B para 7-147 a [verified] for splices, borrowed for other attachments; their room in a
// hole and what a turnbuckle is screwed out [common practice, no source].
inline LimitEdges of_attachment_travel() {
  const std::string rule = "attachment-travel";
  const RoutePoint fairlead = held({50, 0, 10}, HoldKind::fairlead);
  return {
      {.rule = rule,
       .row = "jam",
       .limit = 0,
       .source = "nothing can jam at any point of travel",
       .judged = [=](double spare) { return attached("turnbuckle", 49.5 - spare, {fairlead}); },
       .listed = false},  // where it just touches it is too near
      {.rule = rule,
       .row = "splice-to-guide",
       .limit = 2,
       .source = "AC 43.13-1B para 7-147 a",
       .judged = [=](double spare) { return attached("splice", 47.5 - spare, {fairlead}); }},
      {.rule = rule,
       .row = "attachment-to-guide",
       .limit = 2,
       .broken = Verdict::warn,
       .source = "borrowed from the splice rule",
       .judged = [=](double spare) { return attached("turnbuckle", 47.5 - spare, {fairlead}); }},
      {.rule = rule,
       .row = "attachment-to-hole-edge",
       .limit = 0.5,
       .broken = Verdict::warn,
       .source = "where either can move",
       .judged = [](double spare) { return through_hole(0.5 + spare); }},
      {.rule = rule,
       .row = "within-line",
       .limit = 0,
       .source = "geometry",
       .judged = [](double spare) { return attached("terminal", 0.5 + spare); },
       .listed = false},
      {.rule = rule,
       .row = "drawn-length",
       .limit = 0.5,
       .broken = Verdict::warn,
       .source = "its cables are cut for the middle",
       .judged = [](double spare) { return drawn_off(0.5 - spare); },
       .listed = false}};
}

/// A sleeve of 1/4 in on a cable that does not move, clamped at FS 42.
inline SmallProject sleeved(double from_in, double to_in, double bore_in = 0.18) {
  SmallProject project = cable_project({clamped({42, 0, 10})});
  the_route(project).sleeves.push_back({from_in, to_in, bore_in, 0.25, {}});
  set_travel(project, 0, 0);
  return project;
}

inline std::vector<Judgement> with_bore(double room_in) {
  return sleeved(40, 60, 0.139 + room_in).judged_by("sleeve-cover");
}

/// To so far past the sheet of 0.04 in at FS 50.
inline std::vector<Judgement> standing_out(double past_in) {
  SmallProject project = sleeved(40, 50.02 + past_in);
  add_frame(project, "F1", 50, 0.75);
  return project.judged_by("sleeve-cover");
}

/// Held by nothing, or by a stop at each end, the second `gap_in` off.
inline std::vector<Judgement> stopped(std::optional<double> gap_in) {
  SmallProject project = sleeved(40, 60);
  the_route(project).points.clear();
  if (gap_in)
    the_route(project).attached = {{"stop", 39.5, 1, 0.3, {}},
                                   {"stop", 60.5 + *gap_in, 1, 0.3, {}}};
  return project.judged_by("sleeve-cover");
}

/// A clamped sleeve over a corner without a bend.
inline std::vector<Judgement> sharply_turned(double turn_deg) {
  const double turn = turn_deg * degree;
  SmallProject project = sleeved(40, 60);
  the_route(project).points.push_back(corner({50, 0, 10}));
  project.project.nodes.back().at = {50 + 50 * std::cos(turn), 50 * std::sin(turn), 10};
  return project.judged_by("sleeve-cover");
}

/// Short of a groove of 4 in that the cable comes to at FS 48.
inline std::vector<Judgement> short_of_pulley(double gap_in) {
  SmallProject project = sleeved(40, 48 - gap_in);
  the_route(project).points.push_back(pulley_at({50, 0, 10}, 4, {0, 0, 1}));
  project.project.nodes.back().at = {50, 40, 10};
  return project.judged_by("sleeve-cover");
}

// Nothing can jam: AC 43.13-1B para 7-147 a [verified]; that a sleeve must be held is builders'
// report [verified, secondary]. Room, cover and stops [common practice, no source].
inline LimitEdges of_sleeve_cover() {
  const std::string rule = "sleeve-cover";
  const std::string held = "a sleeve that walked along its cable";
  return {{.rule = rule,
           .row = "goes-on",
           .limit = 0,
           .source = "geometry",
           .judged = with_bore,
           .listed = false},  // it goes on tightly
          {.rule = rule,
           .row = "least-room",
           .limit = 0.031,
           .broken = Verdict::warn,
           .source = "room to slide on",
           .judged = [](double spare) { return with_bore(0.031 + spare); }},
          {.rule = rule,
           .row = "most-room",
           .limit = 0.063,
           .broken = Verdict::warn,
           .source = "no room to rattle",
           .judged = [](double spare) { return with_bore(0.063 - spare); }},
          {.rule = rule,
           .row = "stand-out",
           .limit = 0.25,
           .broken = Verdict::warn,
           .source = "one diameter, and the full travel",
           .judged = [](double spare) { return standing_out(0.25 + spare); }},
          {.rule = rule,
           .row = "held",
           .limit = 1,
           .broken = Verdict::warn,
           .source = held,
           .judged =
               [](double spare) { return stopped(spare < 0 ? std::nullopt : std::optional(0.0)); },
           .step = one_off,
           .measured = false},  // held is held
          {.rule = rule,
           .row = "stop-gap",
           .limit = 1,
           .broken = Verdict::warn,
           .source = held,
           .judged = [](double spare) { return stopped(0.25 - spare); },
           .measured = false,
           .cited = "held"},
          {.rule = rule,
           .row = "within-line",
           .limit = 0,
           .source = "geometry",
           .judged = [rule](double spare) { return sleeved(40, 100 - spare).judged_by(rule); },
           .listed = false},
          {.rule = rule,
           .row = "sharp-turn",
           .limit = 0,
           .source = "a tube cannot turn at a point",
           .judged = [](double spare) { return sharply_turned(-spare); },
           .let_pass = 0.01,  // a smaller turn counts as straight
           .listed = false},
          {.rule = rule,
           .row = "sleeve-to-end",
           .limit = 0,
           .source = "wider than the line that the sleeve fits",
           .judged =
               [rule](double spare) {
                 SmallProject project = sleeved(30 + spare, 60);
                 the_route(project).ends.from = CableEnd{CableEndKind::swaged, 30, 1, {}};
                 return project.judged_by(rule);
               },
           .listed = false},
          {.rule = rule,
           .row = "sleeve-jam",
           .limit = 0,
           .source = "nothing can jam at any point of travel",
           .judged = short_of_pulley,
           .listed = false}};
}

inline LimitEdges all() {
  LimitEdges edges = of_attachment_travel();
  for (const LimitEdge& each : of_sleeve_cover()) edges.push_back(each);
  return edges;
}

}  // namespace linewright::attached_edges
