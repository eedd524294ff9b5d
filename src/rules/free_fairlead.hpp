#pragma once
// Fairleads that a cable is to pass without touching.

#include <array>

#include "rules/rule.hpp"

namespace linewright {

inline constexpr std::array<LimitRow, 2> free_fairlead_limits{{
    {"room left in a fairlead that the cable passes free, as drawn", 0, "in",
     "geometry: no two things in one place", Mark::calculated, Verdict::fail},
    {"the same, less the build tolerance and the cable's likely reach", 0, "in",
     "a guide that the cable touches wears and rubs as one it turns in", Mark::common_practice,
     Verdict::warn},
}};

/// One judgement of each.
std::vector<Judgement> judge_free_fairleads(const RuleContext& context);

}  // namespace linewright
