#pragma once
// Holes that are none: they run into each other, or out of their sheet.

#include <vector>

#include "rules/rule.hpp"

namespace linewright {

inline constexpr LimitRow whole_guarded_hole{
    .name = "whole-guarded-hole",
    .subject = "sheet all round a hole in which something guards or guides a line",
    .value = 0,
    .source = "geometry: a guard is fitted to an edge that goes all round",
    .mark = Mark::calculated};
inline constexpr LimitRow hole_in_wall{.name = "hole-in-wall",
                                       .subject = "described hole, from the walls of its part",
                                       .value = 0,
                                       .sense = LimitSense::at_most,
                                       .source = "geometry: a hole is in a wall",
                                       .mark = Mark::calculated};

/// What is wrong with a hole in which something guards or guides the line; nothing where it is
/// whole. Of open holes `hole-edge` says what is wrong. Precondition: `crossing.hole`.
std::optional<Judgement> judge_whole_hole(const RuleContext& context, const PreparedRoute& route,
                                          const Crossing& crossing);

/// Holes described in channels, panels and boxes that are at no wall of theirs.
std::vector<Judgement> judge_holes_in_walls(const RuleContext& context);

}  // namespace linewright
