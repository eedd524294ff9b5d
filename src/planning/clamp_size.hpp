#pragma once
// Which cushion clamp goes about a line.

#include <optional>

#include "model/line.hpp"

namespace linewright {

/// The smallest clamp of the catalogue whose nominal diameter is not under that of what it holds.
/// Nothing where no clamp is so large.
std::optional<ClampSize> clamp_about(double girth_in, const Catalogue& catalogue);

}  // namespace linewright
