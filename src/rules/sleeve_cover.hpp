#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges sleeves: their fit, what holds them, and whether they cover what they guard.
const Rule& sleeve_cover_rule();

}  // namespace linewright
