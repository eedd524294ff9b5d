#pragma once
// How far a cable runs off the plane of its pulley's groove.

#include <array>

#include "rules/rule.hpp"

namespace linewright {

inline constexpr std::array<LimitRow, 4> plane_limits{{
    {"cable of a primary control off the pulley's plane, at most", 1, "deg",
     "MIL-F-18372 para 3.1.1.17.8 (a)", Mark::verified, Verdict::fail},
    {"cable of another control off the pulley's plane, at most", 2, "deg",
     "MIL-F-18372 para 3.1.1.17.8 (b)", Mark::verified, Verdict::fail},
    {"cable of a primary control off the plane as an arm swings it, at most", 2, "deg",
     "MIL-F-18372 para 3.1.1.17.8 (a): where the cable travels sideways", Mark::verified,
     Verdict::fail},
    {"cable of another control off the plane as an arm swings it, at most", 3, "deg",
     "MIL-F-18372 para 3.1.1.17.8 (b): where the cable travels sideways", Mark::verified,
     Verdict::fail},
}};

/// Of the two legs at one of the route's pulleys the one farther off its plane: as drawn, or at
/// either end of the travel where an arm swings it, whichever is nearer to its limit.
Judgement judge_plane(const RuleContext& context, const PreparedRoute& route, std::size_t index);

}  // namespace linewright
