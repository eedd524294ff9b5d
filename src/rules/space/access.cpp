#include <string>

#include "rules/rule.hpp"

namespace linewright {

namespace {

constexpr std::string_view not_yet =
    R"(This version reads and checks what the project states for it, but does not judge it: the
answer is unknown, never a pass.)";
constexpr std::string_view by_hand = "Judge it by hand against the limits shown.";

std::vector<Judgement> judge_access(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const Closure& closure : context.prepared.project->closures) {
    Judgement judgement = context.about(closure.name, closure.where);
    judgement.message =
        "closure " + closure.name + " is stated, but this version does not judge it";
    judgement.source = "this version of the program";
    judgement.mend = "list by hand what the closure makes unreachable";
    judgements.push_back(judgement);
  }
  return judgements;
}

}  // namespace

const Rule& access_rule() {
  static const Rule rule{.name = "access",
                         .purpose = "what a closure makes unreachable (unknown yet)",
                         .explanation = not_yet,
                         .mend = by_hand,
                         .limits = {},
                         .catalogue_limits = "",
                         .judge = judge_access};
  return rule;
}

}  // namespace linewright
