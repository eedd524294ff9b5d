#pragma once

#include "rules/rule.hpp"

namespace linewright {

/// Judges whether turnbuckles, terminals and splices stay clear through full travel.
const Rule& attachment_travel_rule();

}  // namespace linewright
