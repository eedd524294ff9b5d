#pragma once
// Parts of a pressure line that lie level, so that nothing says which way water runs in them.

#include <optional>
#include <vector>

#include "rules/rule.hpp"

namespace linewright {

/// Of `drainage`.
inline constexpr LimitRow least_slope{
    .name = "slope-toward-drain",
    .subject = "slope of a straight part in the attitude that tilts it most",
    .value = 1,
    .unit = Unit::degree,
    .source = "AC 43.13-1B para 12-61 c: keep the slope of lines toward drains; it gives no figure",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};

/// The finding of a route, one for all of its parts that lie level in every attitude; nothing where
/// it has none. Parts shorter than an inch, about as long as a fitting, are let pass.
std::optional<Judgement> judge_level_runs(const RuleContext& context, const PreparedRoute& route,
                                          const std::vector<Attitude>& attitudes);

}  // namespace linewright
