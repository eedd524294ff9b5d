#pragma once
// What a rule that is judged alone does not say by itself. In a check by all rules another one says
// it, or the project says nothing and is asked for nothing; alone, silence would look like a pass.

#include <optional>
#include <string>
#include <vector>

#include "lines/prepared.hpp"
#include "model/judgement.hpp"
#include "words/phrasing.hpp"

namespace linewright {

/// Unknowns of the rules that the verdicts of `rule` rest on, about lines that it judges, and an
/// unknown for what the project must state for it to judge at all. Faults of how air lines are
/// joined, too, where the rule takes them as joined soundly. Empty for an unknown rule's name.
std::vector<Judgement> not_known_to(const std::string& rule, const PreparedProject& prepared,
                                    Phrasing phrasing,
                                    const std::optional<std::string>& only_route = std::nullopt);

}  // namespace linewright
