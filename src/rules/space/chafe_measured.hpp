#pragma once
// What lines can reach across gaps that were measured on the aeroplane.

#include <vector>

#include "rules/rule.hpp"

namespace linewright {

/// Each measured gap, less the measuring tolerance, against how far the line, and the other one
/// where it is to a line, can move there. Nothing of what guards an edge or lies in a sleeve, and
/// where the reach is not known: that is said of the drawing.
std::vector<Judgement> chafe_of_measured_gaps(const RuleContext& context);

}  // namespace linewright
