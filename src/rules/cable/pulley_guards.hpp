#pragma once
// Guards that keep a slack cable in the groove of its pulley.

#include "rules/rule.hpp"

namespace linewright {

inline constexpr LimitRow guards_at_pulley{
    .name = "guards-at-pulley",
    .subject = "guards at a pulley",
    .value = 1,
    .unit = Unit::none,
    .source = "14 CFR 23.689(b): close guards, even when slack",
    .mark = Mark::verified};
inline constexpr LimitRow guards_at_tangents{
    .name = "guards-at-tangent-points",
    .subject = "guards where the tangent points are over 0.5 in apart",
    .value = 2,
    .unit = Unit::none,
    .source = "MIL-F-18372 para 3.1.1.17.13: near each tangent point",
    .mark = Mark::verified};
inline constexpr LimitRow guards_past_quarter_turn{
    .name = "guards-past-quarter-turn",
    .subject = "guards where the cable wraps over 90 deg",
    .value = 3,
    .unit = Unit::none,
    .source = "MIL-F-18372 para 3.1.1.17.13: more between when the wrap is over 90 deg",
    .mark = Mark::verified};
inline constexpr LimitRow guard_gap{
    .name = "guard-gap",
    .subject = "gap between flange and guard",
    .value = 1,
    .sense = LimitSense::at_most,
    .source = "geometry: a cable slips out by a gap as wide as itself",
    .mark = Mark::calculated,
    .times = "cable diameter"};

inline constexpr LimitRow guard_clear{.name = "guard-clear-of-cable",
                                      .subject = "guard beyond the cable in the groove",
                                      .value = 0,
                                      .source = "geometry: no two things in one place",
                                      .mark = Mark::calculated};

/// What is said of the guards of one of the route's pulleys: their number, and their gap.
std::vector<Judgement> judge_guards(const RuleContext& context, const PreparedRoute& route,
                                    std::size_t index);

}  // namespace linewright
