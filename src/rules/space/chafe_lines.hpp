#pragma once
// Which lines can reach each other.

#include <vector>

#include "lines/motion/reach.hpp"
#include "lines/near/line_neighbours.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// Judges route `index` against every route after it in the project. `reaches` are those of each
/// route's spans, in the project's order, and `neighbours` is of these as far as they can reach.
std::vector<Judgement> chafe_of_later_lines(const RuleContext& context,
                                            const std::vector<std::vector<SpanReach>>& reaches,
                                            const LineNeighbours& neighbours, std::size_t index);

}  // namespace linewright
