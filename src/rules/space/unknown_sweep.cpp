#include "rules/space/unknown_sweep.hpp"

namespace linewright {

std::optional<Judgement> unknown_sweep(const RuleContext& context, const PreparedRoute& route,
                                       const LimitRow& row) {
  if (route.line->kind != LineKind::rod) return std::nullopt;
  const std::string& missing = context.motion.reaches[context.index_of(route)].front().missing;
  if (missing.empty()) return std::nullopt;
  Judgement judgement = context.at(route, route.length_in() / 2);
  leave_unknown(judgement, row);
  judgement.message = "what the rod sweeps is not known: " + missing + " is missing";
  judgement.mend = "see rod-travel: state the `arm` of both nodes and the `travel`";
  return judgement;
}

void drop_passes(std::vector<Judgement>& judgements) {
  std::erase_if(judgements, [](const Judgement& each) { return each.verdict == Verdict::pass; });
}

}  // namespace linewright
