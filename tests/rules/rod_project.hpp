#pragma once
// Pushrods between two arms: along FS at WL 10, level and square to both arms as drawn.

#include <string>

#include "rules/small_project.hpp"

namespace linewright {

inline const std::string half_inch_rod = "rod-aluminium-1/2";
inline constexpr double half_inch_rod_radius_in = 0.25;

/// From a horn at FS 100 to one at `to_station`, each on an arm that stands on an axis along BL so
/// far under it, with `travel_in` both ways.
inline SmallProject rod_project(double travel_in, double from_arm_in = 3, double to_arm_in = 3,
                                double to_station = 140) {
  SmallProject project;
  project.node("bellcrank", NodeKind::horn, {100, 0, 10})
      .node("horn", NodeKind::horn, {to_station, 0, 10});
  project.project.nodes[0].arm = Arm{{100, 0, 10 - from_arm_in}, {0, 1, 0}};
  project.project.nodes[1].arm = Arm{{to_station, 0, 10 - to_arm_in}, {0, 1, 0}};
  Route& route = project.route("elevator-rod", half_inch_rod, "bellcrank", "horn");
  route.travel = Travel{travel_in, travel_in, {}};
  return project;
}

/// The same that does not sag.
inline SmallProject stiff_rod(SmallProject project) {
  project.line(half_inch_rod).youngs_modulus_psi->value = 1e18;
  return project;
}

}  // namespace linewright
