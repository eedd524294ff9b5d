#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges whether a primary control hangs on a cable that is large enough.
const Rule& cable_size_rule();

}  // namespace linewright
