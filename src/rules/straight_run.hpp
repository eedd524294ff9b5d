#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges rigid tubes that run dead straight between two fittings.
const Rule& straight_run_rule();

}  // namespace linewright
