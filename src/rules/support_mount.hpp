#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges whether each support is where the part it is said to be fixed to is.
const Rule& support_mount_rule();

}  // namespace linewright
