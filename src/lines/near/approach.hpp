#pragma once
// Where a line, its free-play envelope counted, comes nearest to something.

#include <optional>

#include "geometry/structure/obstacles.hpp"

namespace linewright {

/// The place of least margin. `gap_in` is the free distance between the two surfaces there as drawn
/// (negative: they overlap), `margin_in` is what is left of it after the reach on both sides.
struct Approach {
  double gap_in = 0;
  double margin_in = 0;
  double distance_in = 0;  ///< along the line
  Vec3 on_line;
  Vec3 on_other;
  std::optional<Obstacle> obstacle;  ///< structure only
  double other_distance_in = 0;      ///< along the other line, lines only
};

}  // namespace linewright
