#include "planning/leak_bounds.hpp"

#include <algorithm>
#include <cmath>

#include "physics/atmosphere.hpp"
#include "planning/leak_fit.hpp"

namespace linewright {

namespace {

/// A sudden stroke beyond the target and back leaves more than one to the target.
constexpr double overshoot = 1.3;
/// No curve is taken to be known better, as a share of the limit.
constexpr double least_noise_share = 0.01;

/// With less than half the pressure left, what a minute loses no longer tells.
constexpr double most_raised = 2;

double share_doubt(const PeriodLoss& loss) {
  return share_not_followed * std::abs(loss.loss - loss.corrected);
}

/// How far the thermometer's trailing would have moved the needle away from a loss, signed: what a
/// minute then lost more than its correction says.
double hidden_by_lag(const LeakEvidence& evidence) {
  return evidence.plan->effect_per_degf *
         unseen_by_lag_degf(evidence.thermometer, evidence.plan->limit.period_s);
}

double warmest_change_degf(const LeakEvidence& evidence) {
  const auto [low, high] = std::minmax_element(
      evidence.log.log.rows.begin(), evidence.log.log.rows.end(),
      [](const LogRow& a, const LogRow& b) { return a.temperature_degf < b.temperature_degf; });
  return high->temperature_degf - low->temperature_degf;
}

/// What may have gone unseen beside the thermometer in a minute.
double unseen_beside_degf(const LeakEvidence& evidence) {
  // The means of its first and last third are two thirds of the log apart.
  const double apart_min = evidence.duration_s() * (2.0 / 3) / 60;
  const double told =
      std::min(1.0, evidence.thermometer.moved_degf / apart_min / telling_drift_degf_per_min);
  return std::lerp(unseen_drift_to_pass_degf, unseen_beside_thermometer_degf, told);
}

/// How far the air's temperature may have made up a loss, before a fail.
double temperature_doubt_to_fail(const LeakEvidence& evidence, const PeriodLoss& loss,
                                 bool corrected) {
  if (!corrected) return unseen_drift_to_fail_degf * evidence.per_degf;
  return evidence.thermometer.error_degf * evidence.per_degf + share_doubt(loss) +
         std::max(0.0, -hidden_by_lag(evidence));
}

/// What the needle jumped toward rest in a period.
double jumps_in(const LeakEvidence& evidence, const PeriodLoss& loss) {
  double jumped = 0;
  for (const OddReading& odd : evidence.odd)
    if (odd.jumps && odd.row.time_s > loss.start_s && odd.row.time_s <= loss.end_s)
      jumped += std::max(0.0, -odd.by());
  return jumped;
}

/// True where the loss was over the limit in the first minute and is not any more in the third, for
/// the pressure that is left.
bool wears_off(const LeakEvidence& evidence) {
  const LeakTestPlan& plan = *evidence.plan;
  const double first_s = evidence.log.log.rows.front().time_s;
  const bool corrected = evidence.sees_temperature();
  const PeriodLoss& worst = corrected ? evidence.corrected : evidence.as_read;
  const double later_s = first_s + 2 * slowest_settling_s;
  const auto later = loss_between(evidence.log, later_s, later_s + plan.limit.period_s);
  if (worst.start_s > first_s + slowest_settling_s || !later ||
      raised_to(plan.differential_pa, *later) > most_raised)
    return false;
  const double low = (corrected ? later->corrected : later->loss) - doubt_to_fail(evidence) -
                     temperature_doubt_to_fail(evidence, *later, corrected);
  return low * raised_to(plan.differential_pa, *later) <= plan.limit.loss;
}

}  // namespace

double doubt_to_pass(const LeakEvidence& evidence) {
  return evidence.factor * std::max(evidence.noise.overall, evidence.fitted_noise);
}

double doubt_to_fail(const LeakEvidence& evidence) {
  return evidence.factor * evidence.noise.typical;
}

double temperature_doubt_to_pass(const LeakEvidence& evidence) {
  if (!evidence.sees_temperature()) return unseen_drift_to_pass_degf * evidence.per_degf;
  return (unseen_beside_degf(evidence) + evidence.thermometer.error_degf) * evidence.per_degf +
         share_doubt(evidence.most_corrected) + std::max(0.0, hidden_by_lag(evidence));
}

double highest_loss(const LeakEvidence& evidence) {
  const double full_pa = evidence.plan->differential_pa;
  const double scatter = doubt_to_pass(evidence);
  const double corrected =
      (evidence.most_corrected.corrected + scatter + temperature_doubt_to_pass(evidence)) *
      raised_to(full_pa, evidence.most_corrected);
  const double as_read =
      (evidence.most_as_read.loss + scatter) * raised_to(full_pa, evidence.most_as_read);
  return std::max(corrected, as_read);
}

double lowest_loss(const LeakEvidence& evidence, LossKind kind) {
  const bool corrected = kind == LossKind::corrected && evidence.sees_temperature();
  const auto low = [&](const PeriodLoss& loss) {
    const double lowered =
        loss.start_differential_pa > 0
            ? std::min(1.0, evidence.plan->differential_pa / loss.start_differential_pa)
            : 1;
    return ((corrected ? loss.corrected : loss.loss) - doubt_to_fail(evidence) -
            temperature_doubt_to_fail(evidence, loss, corrected) - jumps_in(evidence, loss)) *
           lowered;
  };
  if (corrected) return std::min(low(evidence.corrected), low(evidence.steady_corrected));
  return std::min(low(evidence.as_read), low(evidence.steady_as_read));
}

bool may_be_settling(const LeakEvidence& evidence) {
  if (wears_off(evidence)) return true;
  const LeakTestPlan& plan = *evidence.plan;
  const double drift = evidence.sees_temperature() ? share_doubt(evidence.corrected)
                                                   : unseen_drift_to_fail_degf * evidence.per_degf;
  const double left = 1 - (plan.limit.loss + drift) * pascals_per_unit(plan) / plan.differential_pa;
  if (left <= 0) return true;
  const double seen = evidence.sees_temperature() ? evidence.thermometer.noise_degf : 0;
  const double noise = std::max(std::hypot(evidence.noise.overall, seen * evidence.per_degf),
                                least_noise_share * plan.limit.loss);
  return settling_explains(evidence.balance, -std::log(left) / plan.limit.period_s,
                           overshoot * plan.quick_stroke_loss * pascals_per_unit(plan),
                           noise * pascals_per_unit(plan));
}

bool temperature_contradicted(const LeakEvidence& evidence) {
  if (!evidence.sees_temperature()) return false;
  if (warmest_change_degf(evidence) < least_telling_change_degf) return false;
  const TemperatureShare share = temperature_share(evidence.balance);
  // Where all that sets the temperature apart from a leak is the thermometer's own scatter, the
  // readings do not follow it, rightly.
  const double scatter_pa =
      evidence.thermometer.noise_degf * evidence.per_degf * pascals_per_unit(*evidence.plan);
  if (share.spread_pa < 2 * scatter_pa) return false;
  const double factor = student_factor_95(static_cast<int>(evidence.balance.size()) - 3);
  return std::abs(share.excess) - factor * share.error > 0.5;
}

double largest_rise(const LeakEvidence& evidence) {
  const LeakLog smooth = without_slips(evidence.log.log);
  const double start_k = kelvins_from_degf(smooth.rows.front().temperature_degf);
  double lowest = 0, rise = 0;
  bool first = true;
  for (const LogRow& row : smooth.rows) {
    double reading = row.reading;
    if (evidence.sees_temperature()) {
      const auto pressure_pa = evidence.plan->gauge.pressure_pa(row.reading).value_or(0);
      reading = evidence.plan->gauge
                    .reading(pressure_pa * start_k / kelvins_from_degf(row.temperature_degf))
                    .value_or(row.reading);
    }
    lowest = first ? reading : std::min(lowest, reading);
    rise = std::max(rise, reading - lowest);
    first = false;
  }
  return rise;
}

double rise_allowed(const LeakEvidence& evidence) {
  const double noise = 6 * std::max(evidence.noise.typical, 0.2 * evidence.noise.overall);
  if (!evidence.sees_temperature()) return noise + unseen_drift_to_fail_degf * evidence.per_degf;
  return noise + evidence.per_degf * (evidence.thermometer.error_degf +
                                      share_not_followed * warmest_change_degf(evidence) + 0.1);
}

}  // namespace linewright
