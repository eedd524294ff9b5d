#pragma once
// How chafe weighs a gap against what a line can reach; shared by its judgements of structure and
// of other lines.

#include <optional>
#include <string>

#include "lines/near/approach.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// Neighbours farther than this beyond all reach are not listed.
inline constexpr double chafe_horizon_in = 0.5;

/// The limit for what a line of this kind will reach.
const LimitRow& likely_row(LineKind kind);

/// The place of least margin for the reach that cannot be passed, and for the likely reach where
/// that one is passed: the likely reach is the narrower everywhere.
struct ReachPair {
  Approach bound;
  std::optional<Approach> likely;
};

/// True where less than the tolerance is left.
bool breaks(const Approach& approach, double tolerance_in);

const Approach& worst_place(const ReachPair& pair);

/// Verdict, numbers and sentence from the two margins; `tolerance_in` comes off both.
void judge_margins(const RuleContext& context, const ReachPair& pair, double tolerance_in,
                   const LimitRow& row, const std::string& what, Judgement& judgement);

}  // namespace linewright
