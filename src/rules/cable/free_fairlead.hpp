#pragma once
// Fairleads that a cable is to pass without touching.

#include "rules/rule.hpp"

namespace linewright {

inline constexpr LimitRow free_as_drawn{
    .name = "free-as-drawn",
    .subject = "room left in a fairlead that the cable passes free, as drawn",
    .value = 0,
    .source = "geometry: no two things in one place",
    .mark = Mark::calculated};
inline constexpr LimitRow free_as_it_moves{
    .name = "free-as-it-moves",
    .subject = "the same, less the build tolerance and the cable's likely reach",
    .value = 0,
    .source = "a guide that the cable touches wears and rubs as one it turns in",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};

/// One judgement of each.
std::vector<Judgement> judge_free_fairleads(const RuleContext& context);

}  // namespace linewright
