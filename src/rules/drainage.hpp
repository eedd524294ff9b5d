#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges whether water runs out of pressure lines in every attitude.
const Rule& drainage_rule();

}  // namespace linewright
