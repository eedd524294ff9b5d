#pragma once
// Push-pull controls: a casing along FS at WL 10, fixed at both ends as drawn.

#include <string>
#include <vector>

#include "rules/small_project.hpp"

namespace linewright {

inline const std::string quarter_inch_casing = "conduit-1/4";
inline constexpr double casing_radius_in = 0.125;

/// From a bracket at FS 100 to one at FS 140. The wire stands out 3 in at both ends and travels 1
/// in both ways.
inline SmallProject casing_project(const std::vector<RoutePoint>& points = {}) {
  SmallProject project;
  project.node("panel", NodeKind::bulkhead, {100, 0, 10})
      .node("carburettor", NodeKind::bulkhead, {140, 0, 10});
  Route& route = project.route("throttle", quarter_inch_casing, "panel", "carburettor", points);
  route.travel = Travel{1, 1, {}};
  route.run_out = RunOut{3, 3, {}};
  return project;
}

/// The same with ends that no structure holds.
inline SmallProject hanging_casing(const std::vector<RoutePoint>& points) {
  SmallProject project = casing_project(points);
  for (Node& node : project.project.nodes) node.kind = NodeKind::end;
  return project;
}

inline Route& throttle(SmallProject& project) {
  return project.project.routes.front();
}

}  // namespace linewright
