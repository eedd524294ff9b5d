#pragma once
// Rows of the rule about ends of cables, each at its edge.

#include <cmath>
#include <numbers>
#include <vector>

#include "rules/cable_project.hpp"
#include "rules/limit_edge.hpp"

namespace linewright::end_edges {

inline constexpr double degree = std::numbers::pi / 180;

/// A sector of 3 in from which 2 in of travel take cable.
inline std::vector<Judgement> left_on_sector(double left_deg) {
  SmallProject project = cable_project();
  project.project.nodes.front().sector = Sector{3, left_deg + 2.0 / 3 / degree};
  set_travel(project, 5, 2);
  return project.judged_by("cable-end");
}

inline void join_pedal(SmallProject& project, EndJoint joint) {
  CableEnd end;
  end.joint = joint;
  the_route(project).ends.from = end;
}

/// A pin that leans toward the cable.
inline std::vector<Judgement> leaning_pin(double lean_deg) {
  SmallProject project = cable_project();
  const Vec3 axis{std::sin(lean_deg * degree), std::cos(lean_deg * degree), 0};
  project.project.nodes.front().arm = Arm{{0, 0, 5}, axis};
  join_pedal(project, EndJoint::pin);
  return project.judged_by("cable-end");
}

inline std::vector<Judgement> turnbuckle_on_pedal(EndJoint joint) {
  SmallProject project = cable_project();
  set_travel(project, 2, 2);
  join_pedal(project, joint);
  Attachment turnbuckle;
  turnbuckle.kind = "turnbuckle";
  turnbuckle.at_in = 2.5;
  turnbuckle.length_in = 4.5;
  turnbuckle.diameter_in = 0.44;
  the_route(project).attached.push_back(turnbuckle);
  return project.judged_by("cable-end");
}

// MIL-F-18372 para 3.1.1.17.12 and above 3.1.1.17.8, 14 CFR 23.689(e) [verified]. That 3 deg is a
// critical bend [common practice, no source].
inline LimitEdges all() {
  return {{.rule = "cable-end",
           .row = "wrap-left-on-sector",
           .limit = 10,
           .source = "MIL-F-18372 para 3.1.1.17.12",
           .judged = [](double spare) { return left_on_sector(10 + spare); }},
          {.rule = "cable-end",
           .row = "bend-at-end",
           .limit = 3,
           .broken = Verdict::warn,
           .source = "no critical bend at terminals",
           .judged = [](double spare) { return leaning_pin(3 - spare); }},
          {.rule = "cable-end",
           .row = "turnbuckle-on-turning-part",
           .source = "14 CFR 23.689(e)",
           .judged =
               [](double spare) {
                 return turnbuckle_on_pedal(spare < 0 ? EndJoint::fixed : EndJoint::pin);
               },
           .measured = false},
          {.rule = "cable-end",
           .row = "moving-end",
           .source = "what is held by structure",
           .judged =
               [](double spare) {
                 SmallProject project = cable_project();
                 set_travel(project, 2, 2);
                 if (spare < 0) project.project.nodes.back().kind = NodeKind::bulkhead;
                 return project.judged_by("cable-end");
               },
           .listed = false,
           .measured = false}};
}

}  // namespace linewright::end_edges
