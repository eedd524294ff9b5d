#include "planning/leak_judge_part.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "planning/loss_words.hpp"

namespace linewright {

namespace {

using PlanOrFault = std::variant<LeakTestPlan, std::string>;

/// The plan with the test set's volume stated, or else with the one given.
PlanOrFault plan_with(const AirPart& part, LeakTestSetup setup, double gauge_in3, PartLimit limit) {
  if (!setup.gauge_volume_in3) setup.gauge_volume_in3 = gauge_in3;
  return plan_part_test(part, setup, limit);
}

/// What is said where the part loses more than its share and less than the whole may.
void leave_open(LeakVerdict& verdict, const LeakTestPlan& share, const LeakTestPlan& whole,
                bool may_fail) {
  const LeakGauge& gauge = share.gauge;
  verdict.answer = LeakAnswer::unknown;
  verdict.reasons.insert(
      verdict.reasons.begin(),
      fmt::format("Not decided: the part loses more than its share of {}{}.",
                  loss_words_down(share.limit.loss, gauge),
                  may_fail ? fmt::format(", and less than the {} at which the whole system must "
                                         "fail, so that it hangs on how tight the rest is",
                                         loss_words(whole.limit.loss, gauge))
                           : std::string("; whether the whole system must then fail is not known, "
                                         "for not all of its volume is stated")));
  verdict.next = {
      "Find this part's leak while its joints are within reach: linewright leak-test plan, with "
      "the same options, has the search.",
      "Or leave it and judge the whole system when it is joined: what this part loses is then no "
      "longer to be had by the rest."};
}

/// Says that the test set's volume was only taken.
LeakVerdict with_gauge_doubt(LeakVerdict verdict, const LeakTestSetup& setup) {
  if (setup.gauge_volume_in3) return verdict;
  verdict.reasons.push_back(fmt::format(
      "The volume of the test set with its hose is not stated: the answer had to hold for anything "
      "from {:.0f} to {:.0f} in3 [common practice, no source].",
      least_gauge_volume_in3, most_gauge_volume_in3));
  if (verdict.answer == LeakAnswer::unknown)
    verdict.next.push_back(
        "Measure the volume of the test set with its hose, and give it as --gauge-volume: the "
        "losses allowed are then known.");
  return verdict;
}

}  // namespace

std::variant<LeakVerdict, std::string> judge_part(const AirPart& part, const LeakTestSetup& setup,
                                                  const LeakLog& log) {
  const PlanOrFault share = plan_with(part, setup, most_gauge_volume_in3, PartLimit::share);
  const PlanOrFault whole = plan_with(part, setup, least_gauge_volume_in3, PartLimit::whole);
  for (const PlanOrFault* plan : {&share, &whole})
    if (const std::string* fault = std::get_if<std::string>(plan)) return *fault;
  const auto& share_plan = std::get<LeakTestPlan>(share);
  const auto& whole_plan = std::get<LeakTestPlan>(whole);
  auto by_share = judge_leak(share_plan, log);
  const auto by_whole = judge_leak(whole_plan, log);
  if (std::holds_alternative<std::string>(by_share)) return by_share;
  if (std::holds_alternative<std::string>(by_whole)) return by_whole;
  auto& verdict = std::get<LeakVerdict>(by_share);
  if (verdict.answer == LeakAnswer::pass) return with_gauge_doubt(verdict, setup);
  const bool may_fail = part.whole_without_volume.empty();
  const auto& of_whole = std::get<LeakVerdict>(by_whole);
  if (may_fail && of_whole.answer == LeakAnswer::fail) return with_gauge_doubt(of_whole, setup);
  if (verdict.answer == LeakAnswer::fail) {
    verdict.reasons.erase(verdict.reasons.begin());
    leave_open(verdict, share_plan, whole_plan, may_fail);
  }
  return with_gauge_doubt(verdict, setup);
}

}  // namespace linewright
