#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges the gap to structure, solids and moving parts.
const Rule& clearance_rule();

}  // namespace linewright
