#pragma once
// How much of a wall is left between holes in it.

#include <optional>

#include "lines/wall.hpp"

namespace linewright {

/// Of a described hole, and of one that is taken to be cut as the assumptions say: what a guide of
/// a thinner wall may get by with is not known.
double cut_diameter_in(const Wall& wall);

/// Between the edges of two holes in one wall, inches, negative where they overlap; nothing where
/// they are in different walls.
std::optional<double> sheet_between_in(const Wall& first, const Wall& second);

}  // namespace linewright
