#pragma once
// Where an arm takes the end of a cable beyond the place it is drawn at.

#include <optional>

#include "lines/arm_swing.hpp"
#include "lines/near/stretch.hpp"

namespace linewright {

/// Places of the end on its way that are looked at are no farther apart than this; so much more
/// than half of it is taken off every gap.
inline constexpr double end_places_apart_in = 0.02;

/// What of the last leg reaches past the drawn end, seen along the drawn leg, at every place of
/// the travel. All of it lies at the end's own distance along the route. Nothing where the arm or
/// the travel is not stated, or the end goes nowhere beyond its place. An arm that cannot give the
/// travel is taken to where it can pull no farther.
std::optional<Stretch> beyond_drawn_end(const PreparedRoute& route, RouteEnd end);

}  // namespace linewright
