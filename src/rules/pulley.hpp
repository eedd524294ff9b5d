#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges pulleys: in the cable's plane, and large enough for its load.
const Rule& pulley_rule();

}  // namespace linewright
