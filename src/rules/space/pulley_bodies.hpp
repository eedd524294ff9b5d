#pragma once
// The bodies of pulleys against structure and each other.

#include <vector>

#include "rules/rule.hpp"

namespace linewright {

/// Of `clearance`.
inline constexpr LimitRow pulley_overlap{
    .name = "pulley-overlap",
    .subject = "a pulley's body to structure and to other pulleys",
    .value = 0,
    .source = "geometry: no two things in one place",
    .mark = Mark::calculated};

/// Whether the bodies of the route's pulleys stand free, less the build tolerance, of all structure
/// but the part that holds them (their `to`), and of each other: a judgement for each thing that
/// one can be in, else one for the nearest. What depends on a size that is not stated is unknown.
std::vector<Judgement> judge_pulley_bodies(const RuleContext& context, const PreparedRoute& route);

}  // namespace linewright
