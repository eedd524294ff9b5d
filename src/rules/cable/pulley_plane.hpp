#pragma once
// How far a cable runs off the plane of its pulley's groove.

#include "rules/rule.hpp"

namespace linewright {

inline constexpr LimitRow plane_primary{
    .name = "plane-primary",
    .subject = "cable of a primary control off the pulley's plane",
    .value = 1,
    .unit = Unit::degree,
    .sense = LimitSense::at_most,
    .source = "MIL-F-18372 para 3.1.1.17.8 (a)",
    .mark = Mark::verified};
inline constexpr LimitRow plane_other{.name = "plane-other",
                                      .subject = "cable of another control off the pulley's plane",
                                      .value = 2,
                                      .unit = Unit::degree,
                                      .sense = LimitSense::at_most,
                                      .source = "MIL-F-18372 para 3.1.1.17.8 (b)",
                                      .mark = Mark::verified};
inline constexpr LimitRow plane_primary_swung{
    .name = "plane-primary-swung",
    .subject = "cable of a primary control off the plane as an arm swings it",
    .value = 2,
    .unit = Unit::degree,
    .sense = LimitSense::at_most,
    .source = "MIL-F-18372 para 3.1.1.17.8 (a): where the cable travels sideways",
    .mark = Mark::verified};
inline constexpr LimitRow plane_other_swung{
    .name = "plane-other-swung",
    .subject = "cable of another control off the plane as an arm swings it",
    .value = 3,
    .unit = Unit::degree,
    .sense = LimitSense::at_most,
    .source = "MIL-F-18372 para 3.1.1.17.8 (b): where the cable travels sideways",
    .mark = Mark::verified};

/// Of the two legs at one of the route's pulleys the one farther off its plane: as drawn, or at
/// either end of the travel where an arm swings it, whichever is nearer to its limit.
Judgement judge_plane(const RuleContext& context, const PreparedRoute& route, std::size_t index);

}  // namespace linewright
