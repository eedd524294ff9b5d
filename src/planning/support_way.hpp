#pragma once
// A line without its clamps, and the places along it where structure could hold it.

#include <string>
#include <vector>

#include "lines/prepared.hpp"

namespace linewright {

/// Places are looked at this far apart, as far as there are no more than `most_support_places`: a
/// longer line has them farther apart.
inline constexpr double support_place_step_in = 0.5;
inline constexpr int most_support_places = 400;

/// A place along a route: something that holds it and stays, an end, or where a support could go.
struct SupportPlace {
  double distance_in = 0;
  RoutePoint point = {};  ///< what would stand there; of what stays: nothing
  std::string on = {};    ///< the part or hole that would hold it; empty where none is named
  bool stays = false;     ///< it holds the line whatever is chosen
  bool drawn = false;     ///< a clamp that the project has there
  int corner = -1;        ///< the point of the bare route that would become the support; -1: none
};

/// A route with only what stays, and the clamps that it had.
struct BareRoute {
  Route route;
  std::vector<RoutePoint> clamps;
};

/// Clamps that stand on the straight between what stays are left out whole; of others the corner
/// stays. The line begins at `from` and ends at `to`.
BareRoute without_clamps(const Route& route, Vec3 from, Vec3 to);

/// All places along a bare route in order, with its two ends the first and the last. Supports may
/// go on straights, an inch or more from what holds the line already: clamps on the nearest of the
/// channels and frames, or of the parts that the route's `supports_on` names; grommets in small
/// bare holes that it goes through; and where `clamps` were drawn. Whether a clamp reaches its part
/// is for the rules to say.
std::vector<SupportPlace> support_places(const PreparedProject& prepared, const PreparedRoute& bare,
                                         const std::vector<RoutePoint>& clamps);

/// The bare route with supports at some of its places, which are in order.
Route with_supports(const PreparedRoute& bare, const std::vector<SupportPlace>& chosen);

/// Distance along the line of the point of it that is nearest to a place.
double nearest_distance_in(const Centreline& line, Vec3 at);

}  // namespace linewright
