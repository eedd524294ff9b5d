#pragma once
// Corners of a path that are drawn because a tape is not a micrometer, and are no bends.

#include <vector>

#include "geometry/centreline.hpp"

namespace linewright {

/// Corners that turn more are meant, however near a straight line comes to them: as much as a cable
/// may turn in a fairlead [14 CFR 23.689(c)].
inline constexpr double largest_slight_turn_rad = 3 * 3.14159265358979323846 / 180;

/// Which corners a straight line misses by less than `within_in`, one answer a corner. The line is
/// that between the corners around them that are none: it runs past all corners between at once,
/// so that many small ones are not taken for none each. Neither they nor any row of them turns by
/// more than `largest_slight_turn_rad` together: corners that add up to more are a bend in many
/// parts, and all of that stretch stay. Only corners that `may_be` slight are, never the two ends.
std::vector<bool> slight_corners(const std::vector<PathCorner>& corners,
                                 const std::vector<bool>& may_be, double within_in);

}  // namespace linewright
