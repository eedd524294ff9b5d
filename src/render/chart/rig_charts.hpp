#pragma once
// Tension against temperature, a chart for each cable.

#include <string>

#include "planning/rig.hpp"

namespace linewright {

/// SVG: the tension that the cable has unloaded at each temperature of the project's range, where
/// it is rigged, and where it hangs slack or would break.
std::string rig_charts(const Rig& rig);

}  // namespace linewright
