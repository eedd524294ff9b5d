#pragma once

#include <string>

#include "planning/rig.hpp"
#include "render/report.hpp"

namespace linewright {

/// A sheet for the rigger: for each cable its length, tension chart, stretch, friction, strength
/// and spans, and what is not known.
std::string rig_text(const Rig& rig, const TextStyle& style);

}  // namespace linewright
