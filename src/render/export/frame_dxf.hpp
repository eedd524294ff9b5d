#pragma once
// A frame as a drawing exchange file, for those who cut by machine.

#include <string>

#include "model/structure.hpp"
#include "words/phrasing.hpp"

namespace linewright {

/// The frame as it is drawn in the project, 1:1, in inches or, where the phrasing says so, in
/// millimetres: an ASCII file of release 12 of the format (AC1009), which nearly all programs read.
/// Layers: OUTLINE; a layer of holes for each kind of edge (HOLES-BARE, HOLES-GROMMET, …), for what
/// is drilled is not the same; CENTRES with a point for each round hole; NAMES.
std::string frame_dxf(const Frame& frame, const Phrasing& phrasing);

}  // namespace linewright
