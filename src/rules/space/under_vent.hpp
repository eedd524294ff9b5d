#pragma once
// Wire bundles under lines that carry what burns.

#include <optional>

#include "lines/near/stretch.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// Of `separation`.
inline constexpr LimitRow over_vent{
    .name = "wire-over-vent",
    .subject =
        "height of a wire bundle over a vent line (flammable vapour), where they are nearest",
    .value = 0,
    .source = "TM 1-1500-204-23-4 item 23: wires above lines that carry what burns",
    .mark = Mark::verified,
    .broken = Verdict::warn};

bool is_vent(const PreparedRoute& route);

/// What drips from a line, or sinks from it, must not find a bundle under it. Nothing where the
/// bundle is farther from the line than `near_in`, or over it.
std::optional<Judgement> judge_under_vent(const RuleContext& context, const Stretch& wire,
                                          const Stretch& vent, double near_in);

}  // namespace linewright
