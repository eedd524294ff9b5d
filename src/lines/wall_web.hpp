#pragma once
// How much of a wall is left between holes in it.

#include <optional>

#include "lines/wall.hpp"

namespace linewright {

/// What must be cut at the least: all of a described hole, of another its guide's bore and a thin
/// guard.
double cut_diameter_in(const Wall& wall);

/// Between the edges of two holes in one wall, inches, negative where they overlap; nothing where
/// they are in different walls. What must be cut at the least counts.
std::optional<double> sheet_between_in(const Wall& first, const Wall& second);

}  // namespace linewright
