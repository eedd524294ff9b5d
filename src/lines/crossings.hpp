#pragma once
// Where a centreline passes through frames, solved exactly on straights and arcs.

#include <vector>

#include "geometry/centreline.hpp"
#include "lines/prepared.hpp"

namespace linewright {

/// Distances along at which the centreline passes the plane FS = station, ends of the line left
/// out (a fitting may sit in a frame), in order.
std::vector<double> plane_crossings(const Centreline& centreline, double station);

/// Every passage through a frame inside its outline, with the hole it goes through, in order
/// along the line.
std::vector<Crossing> find_crossings(const Centreline& centreline,
                                     const std::vector<Frame>& frames);

}  // namespace linewright
