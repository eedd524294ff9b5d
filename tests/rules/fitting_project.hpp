#pragma once
// A tube between two fittings of known size, for the rules.

#include "rules/small_project.hpp"

namespace linewright {

/// A union at `at` whose ports stand `take_up_in` aft and forward of it; 0.6 in thick.
inline Node union_at(const std::string& name, Vec3 at, double take_up_in = 1) {
  Node node;
  node.name = name;
  node.kind = NodeKind::union_fitting;
  node.at = at;
  node.where = {"nodes.yaml", 7, 5};
  node.ports = {{"a", at + Vec3{take_up_in, 0, 0}, {1, 0, 0}, 0, {}},
                {"b", at - Vec3{take_up_in, 0, 0}, {-1, 0, 0}, 0, {}}};
  node.body = FittingBody{0.3, 0};
  return node;
}

/// Of tubes that weigh nothing, so that a fitting on the end of one stays where it is drawn.
inline SmallProject still(SmallProject project) {
  for (Line& line : project.project.catalogue.lines) line.weight_lb_per_in = SourcedValue{0, {}};
  return project;
}

/// From port a of a union at the origin aft to an altimeter 40 in off, over these points.
inline SmallProject from_union(const std::vector<RoutePoint>& points,
                               const std::string& line = "tube-aluminium-1/4",
                               Vec3 end = {40, 0, 0}) {
  SmallProject project;
  project.project.build_tolerance_in = 0.06;
  project.project.nodes.push_back(union_at("union", {0, 0, 0}));
  project.node("altimeter", NodeKind::instrument, end);
  project.route("main", line, "union", "altimeter", points).from_port = "a";
  return project;
}

}  // namespace linewright
