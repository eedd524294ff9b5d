#include "lines/motion/attached_shift.hpp"

#include <algorithm>

#include "physics/cable.hpp"
#include "physics/pilot_force.hpp"

namespace linewright {

AttachedShift attached_shift(const PreparedRoute& route, double at_in) {
  const Line& line = *route.line;
  AttachedShift shift;
  if (line.kind != LineKind::cable) return shift;
  const std::optional<Movement>& moves = route.moves;
  if (moves) {
    shift.toward_from_in = moves->toward_from_in;
    shift.toward_to_in = moves->toward_to_in;
  }
  const auto stretch_in = [&](double load_lbf) {
    return cable_stretch_in(load_lbf, {.length_in = std::max(at_in, route.length_in() - at_in),
                                       .axial_stiffness_lbf = line.axial_stiffness_lbf->value});
  };
  const std::optional<double> limit_load = limit_load_lbf(*route.route);
  const bool loaded = limit_load.has_value();
  if (line.axial_stiffness_lbf && loaded) {
    shift.toward_from_in += stretch_in(*limit_load);
    shift.toward_to_in += stretch_in(*limit_load);
  } else {
    shift.missing =
        loaded ? "the stretch of " + line.name : "the limit load of " + route.route->name;
    shift.bounded = line.axial_stiffness_lbf && line.breaking_strength_lbf;
    if (shift.bounded) shift.bound_in = stretch_in(line.breaking_strength_lbf->value);
  }
  if (moves) return shift;
  shift.missing = "the travel of " + route.route->name;
  shift.bounded = false;
  return shift;
}

}  // namespace linewright
