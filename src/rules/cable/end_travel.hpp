#pragma once
// The ends of a cable, moved through full travel: what a pin's terminal takes up is stiff, and goes
// neither through a guide nor onto it.

#include <vector>

#include "lines/passages.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// What an end takes up along its cable, and the pin that it is on, against what the cable passes.
/// An end that is drawn under `attached` too is judged as that; one on a sector lies on it, and is
/// judged by `cable-end`. Passes are said of stated ends alone.
std::vector<Judgement> judge_end_travel(const RuleContext& context, const PreparedRoute& route,
                                        const std::vector<Passage>& passages);

}  // namespace linewright
