#pragma once
// How long a turnbuckle is drawn, against what it can be screwed to.

#include <optional>

#include "rules/rule.hpp"

namespace linewright {

inline constexpr LimitRow drawn_length_limit{
    .name = "drawn-length",
    .subject = "turnbuckle as drawn from the middle of its adjustment",
    .value = 0.5,
    .sense = LimitSense::at_most,
    .source = "its cables are cut for the middle",
    .mark = Mark::common_practice,
    .broken = Verdict::warn,
    .times = "adjustment it has each way"};

/// A turnbuckle that is drawn far from the length its cables are cut for; nothing for any other,
/// and for attachments without a stated adjustment.
std::optional<Judgement> judge_drawn_length(const RuleContext& context, const PreparedRoute& route,
                                            const Attachment& attachment);

}  // namespace linewright
