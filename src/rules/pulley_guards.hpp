#pragma once
// Guards that keep a slack cable in the groove of its pulley.

#include <array>

#include "rules/rule.hpp"

namespace linewright {

inline constexpr std::array<LimitRow, 4> guard_limits{{
    {"guards at a pulley, at least", 1, "", "14 CFR 23.689(b): close guards, even when slack",
     Mark::verified, Verdict::fail},
    {"guards where the tangent points are over 0.5 in apart, at least", 2, "",
     "MIL-F-18372 para 3.1.1.17.13: near each tangent point", Mark::verified, Verdict::fail},
    {"guards where the cable wraps over 90 deg, at least", 3, "",
     "MIL-F-18372 para 3.1.1.17.13: more between when the wrap is over 90 deg", Mark::verified,
     Verdict::fail},
    {"gap between flange and guard, at most", 1, "cable diameter",
     "geometry: a cable slips out by a gap as wide as itself", Mark::calculated, Verdict::fail},
}};

/// What is said of the guards of one of the route's pulleys: their number, and their gap.
std::vector<Judgement> judge_guards(const RuleContext& context, const PreparedRoute& route,
                                    std::size_t index);

}  // namespace linewright
