#pragma once
// The arm of a cable's end against the moving part that it is one with.

#include <vector>

#include "rules/rule.hpp"

namespace linewright {

/// Of `bend-fit`. Axes are told to a degree.
inline constexpr LimitRow arm_sweep{.name = "arm-sweep",
                                    .subject =
                                        "turn that a cable's or a rod's travel gives its arm, "
                                        "beyond the sweep of the part that it is on",
                                    .value = 1,
                                    .unit = Unit::degree,
                                    .sense = LimitSense::at_most,
                                    .source = "geometry: an arm turns with the part that it is on",
                                    .mark = Mark::calculated};

/// A fail for each end of the cable or rod whose travel turns its arm farther than the moving part
/// on the arm's axis is stated to sweep: what that strikes on the rest of its way is not found. Of
/// several on one axis, the one that is drawn at the end.
std::vector<Judgement> judge_arm_sweeps(const RuleContext& context, const PreparedRoute& route);

}  // namespace linewright
