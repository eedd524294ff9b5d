#pragma once
// What keeps a cable from going slack.

#include <cstddef>
#include <optional>
#include <vector>

#include "lines/motion/cable_state.hpp"

namespace linewright {

/// By how many pounds a cable, and the other one of its control with it, must be rigged tighter for
/// nothing of it to be left over: neither in the cold nor while that one is pulled to the limit.
/// Nothing where it does not go slack, where that is not known, where its control has more cables
/// than two, and where no tension that a light aeroplane's cable is rigged to does it. `states`
/// are those of all routes.
std::optional<double> taut_raise_lbf(const PreparedProject& prepared,
                                     const std::vector<CableState>& states, std::size_t index);

}  // namespace linewright
