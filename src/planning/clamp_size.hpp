#pragma once
// Which cushion clamp goes about a line.

#include <optional>

#include "lines/prepared.hpp"

namespace linewright {

/// The smallest clamp of the catalogue whose nominal diameter is not under that of what it holds:
/// the line, or the sleeve that it is in. Nothing where a sleeve's outside is not stated, or no
/// clamp is so large.
std::optional<ClampSize> clamp_about(const PreparedRoute& route, double distance_in,
                                     const Catalogue& catalogue);

}  // namespace linewright
