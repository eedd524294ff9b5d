#pragma once
// Which lines can reach each other.

#include <vector>

#include "lines/motion/reach.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// Judges route `index` against every route after it in the project. `reaches` are those of each
/// route's spans, in the project's order.
std::vector<Judgement> chafe_of_later_lines(const RuleContext& context,
                                            const std::vector<std::vector<SpanReach>>& reaches,
                                            std::size_t index);

}  // namespace linewright
