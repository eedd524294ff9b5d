#pragma once
// Ends of cables that move, and nothing says where to.

#include <vector>

#include "lines/neighbour_filter.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// For each end of a cable on a horn or pedal whose swing is not known, for want of its `arm` or of
/// the cable's travel: unknown where structure or another line is so near to the last leg that it
/// may be met. An arm at a right angle to the leg takes its end sideways by the travel at the most,
/// so that counts to all sides, falling evenly to nothing at the nearest support; where the travel
/// is not stated either, what is within `unknown_travel_in`. Silent where nothing is so near.
std::vector<Judgement> judge_unknown_swings(const RuleContext& context, const PreparedRoute& route,
                                            const NeighbourFilter& filter, const LimitRow& row);

/// What is taken for a travel that is not stated [common practice, no source].
inline constexpr double unknown_travel_in = 1.5;

}  // namespace linewright
