#pragma once
// The sheet that is left round each hole of a frame.

#include <vector>

#include "model/structure.hpp"

namespace linewright {

/// What is left between a hole and the frame's edge, or another hole of the frame.
struct HoleMargin {
  const Hole* hole = nullptr;
  const Hole* other = nullptr;  ///< written after `hole` where listed as a pair; nullptr: the edge
  double web_in = 0;            ///< edge to edge; negative where they overlap
  bool overlaps = false;        ///< they share a place, if only on their edges
};

/// Of each hole the frame's edge, every other hole that comes within `within_in`, each pair once,
/// and its nearest hole where that is farther. In the order of the holes. The frame must outlive
/// the result.
std::vector<HoleMargin> hole_margins(const Frame& frame, double within_in);

/// The least that is left about one hole of the frame.
HoleMargin least_margin(const Frame& frame, const Hole& hole);

/// The middle of a circle, or of an outline's extents.
Vec2 middle_of(const Hole& hole);

}  // namespace linewright
