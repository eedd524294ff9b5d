#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges each passage through a frame: by a hole, clear of its edge.
const Rule& frame_crossing_rule();

}  // namespace linewright
