#pragma once
// How long a turnbuckle is drawn, against what it can be screwed to.

#include <optional>

#include "rules/rule.hpp"

namespace linewright {

inline constexpr LimitRow drawn_length_limit{
    "turnbuckle as drawn from the middle of its adjustment, share of what it has each way, at most",
    0.5,
    "",
    "its cables are cut for the middle",
    Mark::common_practice,
    Verdict::warn};

/// A turnbuckle that is drawn far from the length its cables are cut for; nothing for any other,
/// and for attachments without a stated adjustment.
std::optional<Judgement> judge_drawn_length(const RuleContext& context, const PreparedRoute& route,
                                            const Attachment& attachment);

}  // namespace linewright
