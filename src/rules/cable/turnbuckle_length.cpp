#include "rules/cable/turnbuckle_length.hpp"

#include <algorithm>
#include <cmath>

#include "rules/rule.hpp"

namespace linewright {

std::optional<Judgement> judge_drawn_length(const RuleContext& context, const PreparedRoute& route,
                                            const Attachment& attachment) {
  if (!attachment.adjustment) return std::nullopt;
  const Adjustment& adjustment = *attachment.adjustment;
  const double off = std::abs(attachment.length_in - adjustment.middle_in());
  Judgement judgement = context.at(route, std::clamp(attachment.at_in, 0.0, route.length_in()));
  if (holds(judgement, off, {drawn_length_limit * adjustment.each_way_in()})) return std::nullopt;
  const Phrasing& phrasing = context.phrasing;
  const std::string middle = phrasing.length(adjustment.middle_in());
  judgement.location = attachment.where;
  judgement.message = "the " + attachment.kind + " is drawn " +
                      phrasing.length(attachment.length_in) + " long, " + phrasing.length(off) +
                      " from the " + middle + " in the middle of its adjustment";
  judgement.mend =
      "draw it " + middle + " long, which its cables are cut for, or state its true adjustment";
  return judgement;
}

}  // namespace linewright
