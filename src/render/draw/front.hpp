#pragma once
// The aeroplane cut at a station, seen from behind: looking forward, right-hand side to the right.

#include <string>

#include "planning/station_cut.hpp"
#include "render/draw/sheet.hpp"

namespace linewright {

/// The frame with its holes, what is cut through, and each line at its true diameter with how far
/// it can move; lines and holes numbered, with their ordinates from BL 0 and WL 0.
std::string front_view(const Drawing& drawing, const StationCut& cut);

}  // namespace linewright
