#pragma once
// What a sleeve runs into on its way along the cable.

#include <vector>

#include "lines/motion/sleeve_hold.hpp"
#include "rules/rule.hpp"

namespace linewright {

inline constexpr LimitRow sleeve_travel_limit{
    .name = "sleeve-jam",
    .subject = "sleeve short of what it would jam on, at full travel",
    .value = 0,
    .source = "AC 43.13-1B para 7-147 a: nothing can jam at any point of travel, loaded or slack",
    .mark = Mark::verified};

/// A finding for every pulley that a cable's sleeve lies over or moves onto, and for every clamp
/// and every guide too narrow for it that it moves into. What it goes through where it is drawn is
/// judged by its bore elsewhere. Unknown where the travel or the guide's bore is not stated.
std::vector<Judgement> judge_sleeve_travel(const RuleContext& context, const PreparedRoute& route,
                                           const Sleeve& sleeve,
                                           const std::vector<Passage>& on_the_way,
                                           const SleeveHold& hold);

}  // namespace linewright
