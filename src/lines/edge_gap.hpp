#pragma once
// How near a line passes to the edge of the hole it goes through.

#include "lines/prepared.hpp"

namespace linewright {

struct EdgeGap {
  double distance_in = 0;  ///< from the centreline to the nearest place on the edge, on either face
  double along_in = 0;     ///< where along the line
};

/// Nearest place of the crossing's hole edge to the centreline, in space, both faces of the sheet
/// counted, so that a line which leans in the hole is judged at its nearest. Circles are exact
/// where the line goes straight through, else to 0.00001 in. Precondition: `crossing.hole` is set.
EdgeGap edge_gap(const PreparedRoute& route, const Crossing& crossing);

}  // namespace linewright
