#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges the gap between lines by their kind.
const Rule& separation_rule();

}  // namespace linewright
