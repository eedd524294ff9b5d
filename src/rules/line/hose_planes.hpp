#pragma once
// Bends of a hose in more planes than one, which twist it.

#include <optional>

#include "rules/rule.hpp"

namespace linewright {

/// Of `bend-fit`.
inline constexpr LimitRow clamp_between_planes{
    .name = "clamp-between-planes",
    .subject = "clamps on a hose between two bends that do not lie in one plane",
    .value = 1,
    .unit = Unit::none,
    .source =
        "TM 1-1500-204-23-2 p. 4-66: clamp a hose that flexes in two directions where it "
        "changes planes",
    .mark = Mark::verified,
    .broken = Verdict::warn};

/// The finding of a hose, one for all places at which its bends change planes and nothing clamps
/// it; nothing where there is none.
std::optional<Judgement> judge_hose_planes(const RuleContext& context, const PreparedRoute& route);

}  // namespace linewright
