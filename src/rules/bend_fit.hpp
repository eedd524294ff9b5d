#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges whether arcs and straights fit between corners, supports and fittings.
const Rule& bend_fit_rule();

}  // namespace linewright
