#pragma once
// The pulleys that cables go over, as bodies that other lines can meet.

#include <optional>
#include <vector>

#include "geometry/structure/obstacles.hpp"
#include "model/project.hpp"

namespace linewright {

struct PreparedRoute;

/// Where the project does not say, a pulley's flanges stand out of the cable's middle by so many
/// diameters of the cable [common practice, no source].
inline constexpr double rim_over_groove_diameters = 1.0;
/// And it is so many of them wide over the flanges [common practice, no source].
inline constexpr double pulley_width_diameters = 2.0;

/// A pulley of a route.
struct RoutePulley {
  const Route* route = nullptr;
  PulleyBody body;
  /// The part of the route that bears on it, with the straights on both sides: slack, they fall
  /// back onto it. At the least what is within an inch of its rim.
  double from_in = 0;
  double to_in = 0;
};

/// Every pulley whose place is known: its diameter is stated, and the cable turns on it or it is
/// given by its centre. One without an axis lies in the plane of the cable's turn. `pulley` judges
/// those that say too little. In the project's order; "pulley 2 of rudder-left" is the second of
/// its route from the nose, whichever end that is written from.
std::vector<RoutePulley> pulleys_of(const std::vector<PreparedRoute>& routes);

/// True where the two are on one spindle.
bool share_a_spindle(const PulleyBody& first, const PulleyBody& second);

/// True where `along_in` of a route lies on the pulley, or beside it on one of the same spindle
/// with room for both: pulleys of a cluster do not count against each other's cables.
bool runs_on(const RoutePulley& pulley, const std::vector<RoutePulley>& all,
             const PreparedRoute& route, double along_in);

}  // namespace linewright
