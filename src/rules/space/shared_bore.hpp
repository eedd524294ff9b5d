#pragma once
// Several lines through one hole, or through the bore of one guide.

#include <vector>

#include "rules/rule.hpp"

namespace linewright {

inline constexpr LimitRow side_by_side_in_bore{
    .name = "side-by-side",
    .subject = "bore, or open hole, over what its lines take up side by side",
    .value = 0,
    .source = "geometry: no two things in one place",
    .mark = Mark::calculated};

/// Whether the lines that go through one bore can lie in it side by side: once for each bore with
/// two lines or more, on each of the lines.
std::vector<Judgement> judge_shared_bores(const RuleContext& context);

}  // namespace linewright
