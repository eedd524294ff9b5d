#pragma once
// What a wire bundle can reach once one of its clamps has let go.

#include <vector>

#include "rules/rule.hpp"

namespace linewright {

/// Of `chafe`.
inline constexpr LimitRow clamp_failed{
    .name = "clamp-failed",
    .subject = "wire bundle to a control cable or moving part, any one clamp failed: gap",
    .value = 1,
    .source = "AC 43.13-1B para 11-125: no failure of one attachment may foul a control",
    .mark = Mark::verified,
    .times = "likely reach"};
inline constexpr LimitRow clamp_failed_by_vent{
    .name = "clamp-failed-by-vent",
    .subject = "wire bundle to a vent line (flammable vapour), any one clamp failed: gap",
    .value = 1,
    .source = "AC 43.13-1B CHG 1 para 11-96 w: no contact with a wire broken and a clamp missing",
    .mark = Mark::verified,
    .times = "likely reach"};

/// Judges each wire bundle against every control cable, vent line and moving part with each of its
/// clamps taken away in turn. Said is the worst for each of them, and only where something is wrong
/// that is not so with all clamps in place. Left out are clamps next to an end that nothing holds,
/// or to a span whose reach is not known: those are findings of their own.
std::vector<Judgement> judge_failed_clamps(const RuleContext& context, const PreparedRoute& bundle,
                                           double tolerance_in);

}  // namespace linewright
