#pragma once
// Rules that this version knows of but cannot judge. Where a project states what they would judge,
// they answer `unknown`, so that nothing stated is passed over in silence.

#include "rules/rule.hpp"

namespace linewright {

const Rule& access_rule();

}  // namespace linewright
