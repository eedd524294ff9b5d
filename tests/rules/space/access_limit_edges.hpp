#pragma once
// Rows of the rule about access, each at its edge.

#include <string>

#include "rules/limit_edge.hpp"
#include "rules/small_project.hpp"

namespace linewright::access_edges {

/// A box from FS 100 to 140, BL -12 to 12, WL 0 to 24, whose lid is a closure with so many
/// openings of 6 in about FS 120.
inline SmallProject box(int openings) {
  SmallProject project;
  const auto panel = [&](const std::string& name, std::vector<Vec3> corners) {
    project.project.structure.panels.push_back({name, std::move(corners), 0.025, "", {}});
  };
  panel("front", {{100, -12, 0}, {100, 12, 0}, {100, 12, 24}, {100, -12, 24}});
  panel("back", {{140, -12, 0}, {140, 12, 0}, {140, 12, 24}, {140, -12, 24}});
  panel("left", {{100, -12, 0}, {140, -12, 0}, {140, -12, 24}, {100, -12, 24}});
  panel("right", {{100, 12, 0}, {140, 12, 0}, {140, 12, 24}, {100, 12, 24}});
  panel("floor", {{100, -12, 0}, {140, -12, 0}, {140, 12, 0}, {100, 12, 0}});
  panel("lid", {{100, -12, 24}, {140, -12, 24}, {140, 12, 24}, {100, 12, 24}});
  Closure lid;
  lid.name = "lid-on";
  lid.covers = {"lid"};
  for (int i = 0; i < openings; ++i) {
    Opening opening;
    opening.name = "hatch-" + std::to_string(i);
    opening.centre = {116.0 + 8 * i, 0, 24};
    opening.normal = Vec3{0, 0, 1};
    opening.size_in = {6, 6};
    opening.reach_in = 26;
    lid.openings.push_back(opening);
  }
  project.project.closures.push_back(lid);
  return project;
}

/// A cable through a fairlead in its middle; it ends outside.
inline std::vector<Judgement> fairlead_under(int openings) {
  SmallProject project = box(openings);
  project.node("forward", NodeKind::bulkhead, {60, 0, 12})
      .node("aft", NodeKind::bulkhead, {180, 0, 12});
  project.route("cable", "cable-7x19-1/8-steel", "forward", "aft",
                {held({120, 0, 12}, HoldKind::fairlead)});
  return project.judged_by("access");
}

/// A union in its middle; its lines end outside.
inline std::vector<Judgement> union_under(int openings) {
  SmallProject project = box(openings);
  project.node("forward", NodeKind::static_port, {60, 0, 12})
      .node("middle", NodeKind::union_fitting, {120, 0, 12})
      .node("aft", NodeKind::instrument, {180, 0, 12});
  project.route("first", "tube-nylon-1/4", "forward", "middle");
  project.route("second", "tube-nylon-1/4", "middle", "aft");
  return project.judged_by("access");
}

/// A closure that covers something, and waits for itself where `waits`.
inline std::vector<Judgement> closed_after_itself(bool waits) {
  SmallProject project = box(1);
  if (waits) project.project.closures[0].after = {"lid-on"};
  return project.judged_by("access");
}

/// A tube over the box, in a clamp on the lid or on nothing that is named.
inline std::vector<Judgement> clamped_to(const std::string& part) {
  SmallProject project = box(1);
  project.node("forward", NodeKind::bulkhead, {60, 0, 30})
      .node("aft", NodeKind::bulkhead, {180, 0, 30});
  RoutePoint clamp = held({120, 0, 30}, HoldKind::clamp);
  clamp.to = part;
  project.route("tube", "tube-nylon-1/4", "forward", "aft", {clamp});
  return project.judged_by("access");
}

// 14 CFR 23.689(a)(3) [verified in a copy]; joints [common practice, no source].
inline LimitEdges all() {
  return {{.rule = "access",
           .row = "control-part-shown",
           .limit = 1,
           .source = "14 CFR 23.689(a)(3)",
           .judged = [](double spare) { return fairlead_under(1 + static_cast<int>(spare)); },
           .step = one_off,
           .measured = false},
          {.rule = "access",
           .row = "joint-reached",
           .limit = 1,
           .broken = Verdict::warn,
           .source = "a leak can be mended",
           .judged = [](double spare) { return union_under(1 + static_cast<int>(spare)); },
           .step = one_off,
           .measured = false},
          {.rule = "access",
           .row = "closing-order",
           .limit = 0,
           .source = "none of them can be the first",
           .judged = [](double spare) { return closed_after_itself(spare < 0); },
           .step = one_off,
           .listed = false},
          {.rule = "access",
           .row = "support-on-closure",
           .limit = 0,
           .broken = Verdict::warn,
           .source = "it is fitted blind, and comes off with what it is fixed to",
           .judged = [](double spare) { return clamped_to(spare < 0 ? "lid" : ""); },
           .step = one_off,
           .listed = false}};
}

}  // namespace linewright::access_edges
