#pragma once
// Cables that hang nobody knows how far off the place they are drawn at.

#include <optional>

#include "rules/rule.hpp"

namespace linewright {

/// Unknown, once for a cable however many of its spans it is so in, where what is missing leaves
/// its sag or surplus length unknown: gaps to it are then measured by what is known. Silent for
/// other lines, which these gaps count as drawn.
std::optional<Judgement> judge_unknown_hang(const RuleContext& context, const PreparedRoute& route,
                                            const LimitRow& row);

}  // namespace linewright
