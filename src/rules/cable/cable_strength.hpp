#pragma once
// A cable's strength at its limit load, and what the pilot can pull on it: the part of
// `cable-tension` that heat and cold do not come into.

#include <vector>

#include "lines/motion/cable_state.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// Breaking strength against the limit load, or against the tension that the pilot's pull gives the
/// cable at the hottest, if larger. `state` is the route's.
Judgement judge_cable_strength(const RuleContext& context, const PreparedRoute& route,
                               const CableState& state);

/// Adds whether a stated limit load covers the pilot's pull, and whether a stated pilot force is
/// one to count with; of a route without a lever ratio, whether its limit load can be right.
void judge_pilot(const RuleContext& context, const PreparedRoute& route,
                 std::vector<Judgement>& judgements);

}  // namespace linewright
