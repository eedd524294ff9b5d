#pragma once
// A line beside the fittings of others.

#include <vector>

#include "rules/rule.hpp"

namespace linewright {

/// What the line keeps off the body of each fitting near it that is of known size and of another
/// line: as off that line, less twice the build tolerance.
std::vector<Judgement> judge_fittings_beside(const RuleContext& context,
                                             const PreparedRoute& route);

}  // namespace linewright
