#pragma once
// Things that are almost mirror images of each other.

#include <string>
#include <vector>

#include "model/project.hpp"

namespace linewright {

/// Two places farther off each other's mirror image than this are meant to be different [common
/// practice, no source: no tape slips by more].
inline constexpr double near_twin_in = 0.125;

/// A question for each two nodes, round holes of one frame, channels or panels on either side of
/// BL 0 that are each other's mirror image but for more than the build tolerance and less than
/// `near_twin_in`: a slip of the tape, or a part that looks as if it went on either way round and
/// does not. Nothing is asked of what has a true mirror image.
std::vector<std::string> near_twins(const Project& project);

}  // namespace linewright
