#include "rules/waivers.hpp"

#include "rules/registry.hpp"

namespace linewright {

namespace {

bool matches(const Waiver& waiver, const Judgement& judgement) {
  if (judgement.rule != waiver.rule) return false;
  const bool other = judgement.with_is_route && judgement.with == waiver.route;
  if (judgement.route != waiver.route && !other) return false;
  if (!waiver.near) return true;
  return judgement.at && distance(*judgement.at, *waiver.near) <= waiver.within_in;
}

Judgement unused(const Waiver& waiver, bool met_unknown) {
  Judgement judgement;
  judgement.rule = "waivers";
  judgement.verdict = Verdict::warn;
  judgement.route = waiver.route;
  judgement.at = waiver.near;
  judgement.location = waiver.where;
  judgement.source = "a waiver that waives nothing hides what it was meant for";
  if (!find_rule(waiver.rule)) {
    judgement.message = "no rule is called '" + waiver.rule + "', so the waiver waives nothing";
    judgement.mend = "name a rule from: linewright rules";
  } else if (met_unknown) {
    judgement.message =
        "the waiver of " + waiver.rule + " meets only an unknown, which cannot be waived";
    judgement.mend = "state what is missing, so that it can be judged";
  } else {
    judgement.message = "the waiver of " + waiver.rule + " matches no failure or warning";
    judgement.mend = "remove it, or correct its route, near or within";
  }
  return judgement;
}

}  // namespace

void apply_waivers(const PreparedProject& prepared, const std::optional<std::string>& only_rule,
                   std::vector<Judgement>& judgements) {
  std::vector<Judgement> warnings;
  for (const Waiver& waiver : prepared.project->waivers) {
    if (only_rule && waiver.rule != *only_rule) continue;
    bool used = false;
    bool met_unknown = false;
    for (Judgement& judgement : judgements) {
      if (!matches(waiver, judgement)) continue;
      met_unknown = met_unknown || judgement.verdict == Verdict::unknown;
      used = used || judgement.verdict == Verdict::waived;
      if (judgement.verdict != Verdict::fail && judgement.verdict != Verdict::warn) continue;
      judgement.waived_verdict = judgement.verdict;
      judgement.waived_reason = waiver.reason;
      judgement.verdict = Verdict::waived;
      used = true;
    }
    if (!used) warnings.push_back(unused(waiver, met_unknown));
  }
  judgements.insert(judgements.end(), warnings.begin(), warnings.end());
}

}  // namespace linewright
