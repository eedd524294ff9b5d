#pragma once
// What a project says of a pulley, apart from what is taken for what it leaves out.

#include "geometry/structure/pulley_body.hpp"
#include "lines/prepared.hpp"

namespace linewright {

/// The point that the pulley is of.
const RoutePoint& point_of(const RoutePulley& pulley);

/// What the project's numbers make of it at the least: without its own, flanges no farther out than
/// the cable's middle, and no wider than the cable is stated to be.
PulleyBody least_body(const RoutePulley& pulley, const Line& line);

}  // namespace linewright
