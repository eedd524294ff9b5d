#include "rules/space/unknown_sweep.hpp"

#include "lines/casing_ends.hpp"

namespace linewright {

std::optional<Judgement> unknown_sweep(const RuleContext& context, const PreparedRoute& route,
                                       const LimitRow& row) {
  const LineKind kind = route.line->kind;
  if (kind != LineKind::rod && kind != LineKind::conduit) return std::nullopt;
  const std::string missing = kind == LineKind::conduit
                                  ? missing_of_casing(route)
                                  : context.motion.reaches[context.index_of(route)].front().missing;
  if (missing.empty()) return std::nullopt;
  Judgement judgement = context.at(route, kind == LineKind::rod ? route.length_in() / 2 : 0);
  leave_unknown(judgement, row);
  if (kind == LineKind::conduit) {
    judgement.message =
        "what the wire sweeps beyond its casing is not known: " + missing + " is missing";
    judgement.mend = "see casing-ends: state the `travel` and the `run_out`";
    return judgement;
  }
  const RodFault fault = context.motion.rods[context.index_of(route)].fault;
  if (fault == RodFault::from_too_short || fault == RodFault::cannot_follow) {
    judgement.message = "what the rod sweeps is not known: " +
                        (fault == RodFault::from_too_short
                             ? "the arm at " + route.from->name + " is too short for the travel"
                             : "the arm at " + route.to->name + " cannot follow the travel");
    judgement.mend = "see rod-travel: state a longer arm, or less `travel`";
    return judgement;
  }
  judgement.message = "what the rod sweeps is not known: " + missing + " is missing";
  judgement.mend = "see rod-travel: state the `arm` of both nodes and the `travel`";
  return judgement;
}

void drop_passes(std::vector<Judgement>& judgements) {
  std::erase_if(judgements, [](const Judgement& each) { return each.verdict == Verdict::pass; });
}

}  // namespace linewright
