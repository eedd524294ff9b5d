#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges how far each instrument trails the pressure outside in a steady climb.
const Rule& lag_rule();

}  // namespace linewright
