#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges each bend's radius against the least its line stands.
const Rule& bend_radius_rule();

}  // namespace linewright
