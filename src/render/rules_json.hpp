#pragma once

#include <string>
#include <vector>

#include "render/json_values.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// {"linewright", "rules": [...]}, every rule with its whole manual.
std::string rules_json(const std::vector<const Rule*>& rules);

/// One rule with its whole manual, and with what `check` says of the rule's `examples`.
Json rule_manual(const Rule& rule);

}  // namespace linewright
