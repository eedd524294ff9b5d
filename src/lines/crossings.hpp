#pragma once
// Where a centreline passes through frames, solved exactly on straights and arcs.

#include <vector>

#include "geometry/centreline.hpp"
#include "lines/prepared.hpp"

namespace linewright {

/// Distances along at which the centreline passes the plane, ends of the line left out (a fitting
/// may sit in a frame), in order.
std::vector<double> plane_crossings(const Centreline& centreline, const DrawnPlane& plane);

/// Another hole of the frame that `hole`, one of its own, overlaps; nullptr for none.
const Hole* overlapped_by(const Frame& frame, const Hole& hole);

/// Every passage through a frame inside its outline, with the hole it goes through, in order
/// along the line.
std::vector<Crossing> find_crossings(const Centreline& centreline,
                                     const std::vector<Frame>& frames);

/// The same, and every passage through the hole of a wall. `walls` must outlive the result.
std::vector<Crossing> find_crossings(const Centreline& centreline, const std::vector<Frame>& frames,
                                     const Walls& walls);

}  // namespace linewright
