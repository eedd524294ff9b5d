#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges how much longer a hose is than the distance it spans.
const Rule& slack_rule();

}  // namespace linewright
