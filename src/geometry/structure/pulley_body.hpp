#pragma once
// A pulley as something in the way of other lines: two flanges and what is between them under the
// groove.

#include <vector>

#include "geometry/structure/obstacles.hpp"

namespace linewright {

/// Adds the pulley's primitives, all of part `part`: three swollen discs. The flanges take a
/// quarter of the width each, and their rims are round; between them the groove is open down to its
/// root.
void add_pulley_body(const PulleyBody& pulley, int part, std::vector<Obstacle>& obstacles);

/// From the pulley's surface to the obstacle's; below zero where they overlap, by no more than they
/// do. To within a rounding error exact. The first point lies inside the pulley.
Nearest nearest(const PulleyBody& pulley, const Obstacle& obstacle);
Nearest nearest(const PulleyBody& first, const PulleyBody& second);

}  // namespace linewright
