#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges how the lines are joined.
const Rule& network_rule();

}  // namespace linewright
