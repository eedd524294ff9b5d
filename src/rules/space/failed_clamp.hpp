#pragma once
// What a line can reach once one of its clamps has let go.

#include <vector>

#include "lines/near/line_neighbours.hpp"
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

/// Of `chafe`. No rule asks it of tubes and hoses.
inline constexpr LimitRow tube_clamp_failed{
    .name = "tube-clamp-failed",
    .subject = "tube, hose or casing to a control cable or moving part, any one clamp failed: gap",
    .value = 1,
    .source = "what is asked of wire bundles, taken for tubes and hoses",
    .mark = Mark::common_practice,
    .broken = Verdict::warn,
    .times = "likely reach"};

/// Judges each wire bundle, tube and hose against every control cable and moving part, a bundle
/// against vent lines, too, with each of its clamps taken away in turn. Said is the worst for each
/// of them, and only where something is wrong that is not so with all clamps in place. Left out are
/// clamps next to an end that nothing holds, or to a span whose reach is not known: those are
/// findings of their own. Of tubes and hoses only what they are likely to reach is said.
/// `neighbours` are all lines as they hang, as far as they can reach.
std::vector<Judgement> judge_failed_clamps(const RuleContext& context, const PreparedRoute& line,
                                           const LineNeighbours& neighbours, double tolerance_in);

/// True for a judgement of `judge_failed_clamps`.
bool is_of_lost_clamp(const Judgement& judgement);

}  // namespace linewright
