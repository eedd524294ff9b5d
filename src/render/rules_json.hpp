#pragma once

#include <string>
#include <vector>

#include "rules/rule.hpp"

namespace linewright {

/// {"linewright", "rules": [...]}, every rule with its whole manual.
std::string rules_json(const std::vector<const Rule*>& rules);

/// {"linewright", "rule": {...}}, with what `check` says of the rule's `examples`.
std::string rule_manual_json(const Rule& rule);

}  // namespace linewright
