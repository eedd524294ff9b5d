#pragma once
// Attachments of a line and the sleeves on it.

#include <vector>

#include "lines/motion/sleeve_hold.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// A finding for every attachment that runs into the sleeve, or lies in it, whose bore it does not
/// go into. A sleeve that structure holds stands still while the attachment travels, a turnbuckle
/// at its longest; any other goes with it. None for a sleeve without a stated bore.
std::vector<Judgement> judge_attachments_in_sleeve(const RuleContext& context,
                                                   const PreparedRoute& route, const Sleeve& sleeve,
                                                   const SleeveHold& hold);

/// True where the attachment, its middle at `at_in`, neither lies in a sleeve that it does not go
/// into nor runs into one.
bool keeps_out_of_sleeves(const RuleContext& context, const PreparedRoute& route,
                          const Attachment& attachment, double at_in);

}  // namespace linewright
