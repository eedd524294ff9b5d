#pragma once
// Sleeves at the ends of their line: what takes hold of a cable there, and nuts of fittings.

#include <vector>

#include "lines/motion/sleeve_hold.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// Of `sleeve-cover`.
inline constexpr LimitRow sleeve_to_end{
    .name = "sleeve-to-end",
    .subject = "sleeve short of what takes hold of its line's end, at full travel",
    .value = 0,
    .source = "geometry: a terminal or a nut is wider than the line that the sleeve fits",
    .mark = Mark::calculated};

/// A finding for each end of its line that the sleeve lies over, or that travels into it where
/// structure holds it: a swaged terminal or a nut is no place for one that fits the line. How far a
/// thimble's splice reaches is not known.
std::vector<Judgement> judge_sleeve_at_ends(const RuleContext& context, const PreparedRoute& route,
                                            const Sleeve& sleeve, const SleeveHold& hold);

}  // namespace linewright
