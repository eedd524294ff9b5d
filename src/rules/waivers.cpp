#include "rules/waivers.hpp"

#include <map>
#include <string_view>
#include <utility>

#include "rules/registry.hpp"

namespace linewright {

namespace {

/// By rule and route, either of both routes, the judgements that a waiver of them may be for.
using ByRuleAndRoute =
    std::map<std::pair<std::string_view, std::string_view>, std::vector<std::size_t>>;

ByRuleAndRoute by_rule_and_route(const std::vector<Judgement>& judgements) {
  ByRuleAndRoute found;
  for (std::size_t i = 0; i < judgements.size(); ++i) {
    const Judgement& judgement = judgements[i];
    found[{judgement.rule, judgement.route}].push_back(i);
    if (judgement.with_is_route && judgement.with && *judgement.with != judgement.route)
      found[{judgement.rule, *judgement.with}].push_back(i);
  }
  return found;
}

bool is_there(const Waiver& waiver, const Judgement& judgement) {
  if (!waiver.near) return true;
  return judgement.at && distance(*judgement.at, *waiver.near) <= waiver.within_in;
}

Judgement unused(const Waiver& waiver, bool met_unknown) {
  Judgement judgement;
  judgement.rule = waivers_name;
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

Judgement without_waiver(Judgement judgement) {
  judgement.verdict = judgement.unwaived();
  judgement.waived = {};
  return judgement;
}

void apply_waivers(const PreparedProject& prepared, const std::optional<std::string>& only_rule,
                   std::vector<Judgement>& judgements) {
  if (prepared.project->waivers.empty()) return;
  const ByRuleAndRoute places = by_rule_and_route(judgements);
  std::vector<Judgement> warnings;
  for (const Waiver& waiver : prepared.project->waivers) {
    if (only_rule && waiver.rule != *only_rule) continue;
    bool used = false;
    bool met_unknown = false;
    const auto met = places.find({waiver.rule, waiver.route});
    for (const std::size_t i : met == places.end() ? std::vector<std::size_t>{} : met->second) {
      Judgement& judgement = judgements[i];
      if (!is_there(waiver, judgement)) continue;
      met_unknown = met_unknown || judgement.verdict == Verdict::unknown;
      used = used || judgement.verdict == Verdict::waived;
      if (judgement.verdict != Verdict::fail && judgement.verdict != Verdict::warn) continue;
      judgement.waived = Waived{waiver.reason, judgement.verdict};
      judgement.verdict = Verdict::waived;
      used = true;
    }
    if (!used) warnings.push_back(unused(waiver, met_unknown));
  }
  judgements.insert(judgements.end(), warnings.begin(), warnings.end());
}

}  // namespace linewright
