#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges cable tension over the temperature range, and strength at the limit load.
const Rule& cable_tension_rule();

}  // namespace linewright
