#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges the first frequency of each span against the propeller's orders at cruise.
const Rule& resonance_rule();

}  // namespace linewright
