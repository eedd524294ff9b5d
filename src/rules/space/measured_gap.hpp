#pragma once
// Gaps that were measured on the aeroplane, held against a rule's own limits.

#include <functional>
#include <vector>

#include "lines/near/measured_gaps.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// The limits that a rule has for a gap, all of which apply, the gravest first; none where it says
/// nothing of it.
using LimitsOfGap = std::function<std::vector<Limit>(const PreparedRoute&, const MeasuredGap&)>;

/// A judgement of each measured gap that the rule has limits for: the gap less the measuring
/// tolerance, and less what a control cable can sag or swing from where it was when measured. They
/// stand beside those of the drawing.
std::vector<Judgement> judge_measured_gaps(const RuleContext& context, const LimitsOfGap& limits);

/// A judgement of the rule about a measured gap, with all that tells of the measure; verdict still
/// unknown.
Judgement about_measured(const RuleContext& context, const PreparedRoute& route,
                         const MeasuredGap& gap);

/// How much wider than where it lies still a line is there, to all sides.
double reach_there_in(const std::vector<Stretch>& stretches, Reach reach, double distance_in);

}  // namespace linewright
