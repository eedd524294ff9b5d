#pragma once
// Which lines can reach each other.

#include <vector>

#include "lines/near/line_neighbours.hpp"
#include "rules/rule.hpp"
#include "rules/space/still_reaches.hpp"

namespace linewright {

/// Judges route `index` against every route after it in the project. `neighbours` is of `reaches`
/// as far as they can reach.
std::vector<Judgement> chafe_of_later_lines(const RuleContext& context, const StillReaches& reaches,
                                            const LineNeighbours& neighbours, std::size_t index);

}  // namespace linewright
