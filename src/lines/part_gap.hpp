#pragma once
// How far a line is from the part that is to hold it.

#include "lines/prepared.hpp"

namespace linewright {

/// From the line's surface, at a place along the route, to the nearest surface of a part (an index
/// into the obstacles' parts), inches; zero where they meet or overlap. A mesh that is farther than
/// it was read to answer for is endlessly far.
double gap_to_part_in(const PreparedProject& prepared, const PreparedRoute& route,
                      double distance_in, int part);

}  // namespace linewright
