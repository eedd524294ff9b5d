#include "rules/space/unknown_hang.hpp"

#include <algorithm>

namespace linewright {

std::optional<Judgement> judge_unknown_hang(const RuleContext& context, const PreparedRoute& route,
                                            const LimitRow& row) {
  if (route.line->kind != LineKind::cable) return std::nullopt;
  const std::vector<SpanReach>& reaches = context.motion.reaches[context.index_of(route)];
  const auto reach = std::find_if(reaches.begin(), reaches.end(),
                                  [](const SpanReach& each) { return !each.hang_known; });
  if (reach == reaches.end()) return std::nullopt;
  Judgement judgement = context.at(route, (reach->stretch.start_in + reach->stretch.end_in) / 2);
  leave_unknown(judgement, row);
  judgement.message = "how far the cable can hang off is not known: " + reach->missing +
                      " is missing, so that its gaps are only known as drawn";
  judgement.mend = "state it in the project";
  return judgement;
}

}  // namespace linewright
