#pragma once
// What a clamp about a line has to hold.

#include <optional>

#include "lines/tied_lines.hpp"

namespace linewright {

/// Nominal diameter, inches: of the line, or of the sleeve that it is in, or of the bundle that it
/// is tied into there. Nothing where a sleeve's outside is not stated.
std::optional<double> clamped_girth_in(const PreparedRoute& route, double distance_in,
                                       const TiedLines& tied);

}  // namespace linewright
