#include "planning/leak_judge.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "physics/atmosphere.hpp"
#include "physics/trapped_gas.hpp"
#include "physics/tube_flow.hpp"
#include "planning/leak_bounds.hpp"
#include "planning/leak_doubts.hpp"
#include "planning/loss_words.hpp"

namespace linewright {

namespace {

/// A slower leak is arithmetic: it takes months.
constexpr double least_rate_per_s = 1e-7;

struct RateBounds {
  double low = 0;
  double high = 0;
};

RateBounds rate_bounds_of(const LeakEvidence& evidence) {
  RateBounds bounds{lowest_loss(evidence, LossKind::corrected), highest_loss(evidence)};
  // Where the thermometer is not to be trusted, both the readings and their correction must fail.
  if (temperature_contradicted(evidence))
    bounds.low = std::min(bounds.low, lowest_loss(evidence, LossKind::as_read));
  return bounds;
}

void add_next(LeakVerdict& verdict, const std::string& next) {
  if (std::find(verdict.next.begin(), verdict.next.end(), next) == verdict.next.end())
    verdict.next.push_back(next);
}

void answer(const LeakEvidence& evidence, LeakVerdict& verdict) {
  const RateBounds bounds = rate_bounds_of(evidence);
  verdict.interval = {bounds.low, bounds.high};
  std::vector<LeakDoubt> doubts = leak_doubts(evidence);
  const LeakGauge& gauge = evidence.plan->gauge;
  const double limit = evidence.plan->limit.loss;
  const bool over = bounds.low > limit;
  if (over && !may_be_settling(evidence)) {
    verdict.answer = LeakAnswer::fail;
    verdict.reasons.push_back(fmt::format(
        "At least {} were lost in {:.0f} s, all doubts in the system's favour; {} are allowed.",
        loss_words_down(bounds.low, gauge), verdict.corrected.end_s - verdict.corrected.start_s,
        loss_words(limit, gauge)));
    verdict.next.push_back(
        "Find the leak: linewright leak-test plan, with the same options, has the search.");
    return;
  }
  if (over)
    doubts.insert(doubts.begin(), settling_doubt(evidence));
  else if (evidence.full_minute && bounds.high > limit)
    doubts.push_back(near_limit_doubt(evidence, bounds.low, bounds.high));
  if (doubts.empty()) {
    verdict.answer = LeakAnswer::pass;
    verdict.reasons.push_back(
        fmt::format("At most {} were lost in the worst minute, all doubts against the system; {} "
                    "are allowed.",
                    loss_words(bounds.high, gauge), loss_words(limit, gauge)));
    return;
  }
  verdict.answer = LeakAnswer::unknown;
  for (const LeakDoubt& doubt : doubts) {
    verdict.reasons.push_back("Not decided: " + doubt.why + ".");
    add_next(verdict, doubt.next);
  }
  for (const OddReading& odd : evidence.odd)
    add_next(verdict, fmt::format("Look again at the reading in line {}; if it is no slip of the "
                                  "pen, repeat the log and tap the gauge before each reading.",
                                  odd.row.line));
}

void add_time_constant(const LeakEvidence& evidence, LeakVerdict& verdict) {
  if (!evidence.fit) {
    const PeriodLoss& loss = evidence.corrected;
    verdict.time_constant_s = leak_time_constant_s(loss.start_differential_pa,
                                                   loss.start_differential_pa - loss.corrected_pa,
                                                   loss.end_s - loss.start_s);
    return;
  }
  const double rate_per_s = evidence.fit->rate_per_s;
  if (rate_per_s > 2 * evidence.fit->rate_error_per_s && rate_per_s > least_rate_per_s)
    verdict.time_constant_s = 1 / rate_per_s;
}

/// Where no full minute is logged, what the curve through it would lose in one.
void project_loss(const LeakEvidence& evidence, LeakVerdict& verdict) {
  if (evidence.full_minute) return;
  verdict.loss_is_projected = true;
  if (!verdict.time_constant_s) return;
  const auto left_pa = differential_after_pa(
      evidence.start_differential_pa, evidence.plan->limit.period_s, *verdict.time_constant_s);
  const LeakGauge& gauge = evidence.plan->gauge;
  const auto later = gauge.reading(gauge.pressure_at_differential_pa(left_pa.value_or(0)));
  if (!later) return;
  const double projected = evidence.log.log.rows.front().reading - *later;
  verdict.loss = std::max(verdict.loss, projected);
  if (verdict.loss_corrected)
    *verdict.loss_corrected = std::max(*verdict.loss_corrected, projected);
}

void add_leak(const LeakEvidence& evidence, LeakVerdict& verdict) {
  const PeriodLoss& loss = evidence.corrected;
  const LeakTestPlan& plan = *evidence.plan;
  const auto leak = leak_flow_in3_per_min(plan.tested_in3(), loss.corrected_pa,
                                          loss.end_s - loss.start_s, plan.gauge.ambient_pa);
  const auto density =
      air_density_kg_per_m3(plan.gauge.ambient_pa, kelvins_from_degf(plan.setup.temperature_degf));
  if (!leak || !density || *leak <= 0) return;
  verdict.leak_in3_per_min = leak;
  verdict.hole_in = equivalent_orifice_in(
      *leak / 60, loss.start_differential_pa - loss.corrected_pa / 2, *density);
}

}  // namespace

std::variant<LeakVerdict, std::string> judge_leak(const LeakTestPlan& plan, const LeakLog& log) {
  const std::optional<LeakEvidence> evidence = gather_evidence(plan, log);
  if (!evidence) return "the readings, at this altimeter setting, lie off the standard troposphere";
  LeakVerdict verdict;
  verdict.logged_s = log.duration_s();
  if (evidence->settling.seen) verdict.settled_from_s = evidence->settling.settled_s;
  verdict.thermometer = evidence->thermometer.sight;
  verdict.stands_out = evidence->odd;
  verdict.as_read = evidence->as_read;
  verdict.corrected = evidence->corrected;
  verdict.loss = evidence->as_read.loss;
  if (log.has_temperature) verdict.loss_corrected = evidence->corrected.corrected;
  verdict.reading_noise = std::max(evidence->noise.overall, evidence->fitted_noise);
  add_time_constant(*evidence, verdict);
  project_loss(*evidence, verdict);
  add_leak(*evidence, verdict);
  answer(*evidence, verdict);
  for (const std::string& remark : leak_remarks(*evidence)) verdict.reasons.push_back(remark);
  return verdict;
}

}  // namespace linewright
