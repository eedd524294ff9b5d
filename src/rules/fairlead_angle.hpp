#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges how far a cable turns in each fairlead.
const Rule& fairlead_angle_rule();

}  // namespace linewright
