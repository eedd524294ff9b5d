#pragma once
// Sleeves that do not state how thick they are.

#include <vector>

#include "rules/rule.hpp"

namespace linewright {

/// The wall of a sleeve that states no `outside` is no thicker [common practice, no source]: guard
/// tubes for cables have 1/32 to 1/16 in, hoses up to 1/8 in.
inline constexpr double thickest_sleeve_wall_in = 0.125;

/// What `judge` says, and where the project has sleeves without `outside`, an unknown for each of
/// them with which a judgement would be worse if the sleeve had so thick a wall: found out by
/// judging a second time. `row` is the limit that could not be held against.
std::vector<Judgement> with_unknown_girths(const RuleContext& context, const LimitRow& row,
                                           std::vector<Judgement> (*judge)(const RuleContext&));

}  // namespace linewright
