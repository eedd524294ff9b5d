#include "rules/turnbuckle_length.hpp"

#include <algorithm>
#include <cmath>

#include "rules/attachment_travel.hpp"

namespace linewright {

std::optional<Judgement> judge_drawn_length(const RuleContext& context, const PreparedRoute& route,
                                            const Attachment& attachment) {
  if (!attachment.adjustment) return std::nullopt;
  const Adjustment& adjustment = *attachment.adjustment;
  const double off = std::abs(attachment.length_in - adjustment.middle_in());
  const double most = drawn_length_limit.value * adjustment.each_way_in();
  if (off <= most + limit_rounding_in) return std::nullopt;
  const Phrasing& phrasing = context.phrasing;
  const std::string middle = phrasing.length(adjustment.middle_in());
  Judgement judgement = judgement_at(attachment_travel_rule(), route,
                                     std::clamp(attachment.at_in, 0.0, route.length_in()));
  judgement.location = attachment.where;
  judgement.sense = LimitSense::at_most;
  judgement.value = off;
  judgement.limit = most;
  judgement.source = cite(drawn_length_limit);
  judgement.verdict = drawn_length_limit.broken;
  judgement.message = "the " + attachment.kind + " is drawn " +
                      phrasing.length(attachment.length_in) + " long, " + phrasing.length(off) +
                      " from the " + middle + " in the middle of its adjustment";
  judgement.mend =
      "draw it " + middle + " long, which its cables are cut for, or state its true adjustment";
  return judgement;
}

}  // namespace linewright
