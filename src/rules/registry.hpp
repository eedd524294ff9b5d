#pragma once
// All rules, in the order they are listed and run.

#include <string_view>
#include <vector>

#include "rules/rule.hpp"

namespace linewright {

const std::vector<const Rule*>& all_rules();

/// The rule of that name, or nullptr.
const Rule* find_rule(std::string_view name);

}  // namespace linewright
