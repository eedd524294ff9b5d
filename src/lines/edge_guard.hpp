#pragma once
// What keeps a line off the edge of a hole, and whether it keeps this line off it.

#include "lines/prepared.hpp"

namespace linewright {

/// How far along the line a point that names a hole may be from where the line passes it.
inline constexpr double point_at_hole_in = 0.5;

/// True where the guard on an edge keeps the route's line off the metal. Trim, grommets and
/// bushings do that for a line that stays where it is; a cable that moves, or whose travel is not
/// stated, saws through them [common practice, no source].
bool guards_line(EdgeGuard guard, const PreparedRoute& route);

/// The grommet, bushing or fairlead of the route, passed free or not, whose point is where the line
/// goes through the hole; nullptr for none. Precondition: `crossing.hole`.
const RoutePoint* guide_in(const PreparedRoute& route, const Crossing& crossing);

/// True where the guide in the hole is a fitting round the hole's own middle: a grommet or bushing.
/// A fairlead in another hole may be on a bracket off its middle.
bool fills_hole(const RoutePoint* guide, const Hole& hole);

/// True when the hole's edge, or a guide that the route has in it, keeps the line off the metal. A
/// cable that moves is kept off by a fairlead or a bushing that it is led through; a grommet is too
/// soft for it. A guide whose bore reaches past the hole's edge keeps nothing off it, nor does one
/// in a hole that runs into another or out of its frame. Precondition: `crossing.hole`.
bool is_guarded(const PreparedRoute& route, const Crossing& crossing);

}  // namespace linewright
