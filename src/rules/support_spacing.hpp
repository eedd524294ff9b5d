#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges the free length between supports and past the last one.
const Rule& support_spacing_rule();

}  // namespace linewright
