#pragma once
// Pushrods, and wires of push-pull controls, of which it is not known where they go.

#include <optional>
#include <vector>

#include "rules/rule.hpp"

namespace linewright {

/// Unknown for a rod, or for the wire of a casing, whose sweep is not known, with what is missing;
/// nothing for all others.
std::optional<Judgement> unknown_sweep(const RuleContext& context, const PreparedRoute& route,
                                       const LimitRow& row);

/// A rod as drawn can be seen to be too near to something, but not to be clear of it.
void drop_passes(std::vector<Judgement>& judgements);

}  // namespace linewright
