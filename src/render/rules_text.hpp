#pragma once

#include <string>
#include <vector>

#include "render/report.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// Every rule with its purpose.
std::string rules_text(const std::vector<const Rule*>& rules, const TextStyle& style);

/// One rule's manual: what it judges, its limits with sources, how it is mended, and examples.
std::string rule_manual_text(const Rule& rule, const TextStyle& style);

}  // namespace linewright
