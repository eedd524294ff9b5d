#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges gap against reach: whether a line can rub on an edge, a face or another line.
const Rule& chafe_rule();

}  // namespace linewright
