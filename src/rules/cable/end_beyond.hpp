#pragma once
// Holes that an arm takes the end of a cable through, past the place it is drawn at.

#include <vector>

#include "rules/rule.hpp"

namespace linewright {

/// A finding for each hole of a frame or wall between the place that an end is drawn at and the
/// farthest that its arm takes it: what takes hold of the cable goes through as well. It passes or
/// fails by what is drawn there as attached; else it is unknown, but in a hole so wide that any end
/// goes through. Where there is no hole `clearance` has the cable in the web. Nothing for ends
/// whose arm or travel is not stated.
std::vector<Judgement> judge_ends_beyond(const RuleContext& context, const PreparedRoute& route);

}  // namespace linewright
