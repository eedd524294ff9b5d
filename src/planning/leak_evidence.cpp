#include "planning/leak_evidence.hpp"

#include <algorithm>
#include <cmath>

#include "physics/atmosphere.hpp"

namespace linewright {

namespace {

std::vector<DecaySample> decay_samples(const PressureLog& log) {
  std::vector<DecaySample> samples;
  const double start_k = kelvins_from_degf(log.log.rows.front().temperature_degf);
  for (std::size_t i = 0; i < log.pressure_pa.size(); ++i) {
    const LogRow& row = log.log.rows[i];
    const double steady_pa = log.log.has_temperature ? log.pressure_pa[i] * start_k /
                                                           kelvins_from_degf(row.temperature_degf)
                                                     : log.pressure_pa[i];
    const double differential_pa = log.gauge.differential_pa(steady_pa);
    samples.push_back({row.time_s, differential_pa,
                       log.gauge.differential_pa(log.pressure_pa[i]) - differential_pa});
  }
  return samples;
}

/// How many pascals one unit of the gauge is at the test pressure.
double pascals_per_unit(const LeakTestPlan& plan) {
  return plan.limit_change_pa / plan.limit.loss;
}

/// Doubt of a temperature correction: two readings rounded to the thermometer's step (the
/// difference of two even errors exceeds 0.776 steps once in twenty times), and what of the system
/// may not have followed.
double correction_doubt(const LeakEvidence& evidence, const PeriodLoss& loss) {
  return 0.776 * evidence.log.log.temperature_step_degf * evidence.per_degf +
         share_not_followed * std::abs(loss.loss - loss.corrected);
}

double warmest_change_degf(const LeakEvidence& evidence) {
  const auto [low, high] = std::minmax_element(
      evidence.log.log.rows.begin(), evidence.log.log.rows.end(),
      [](const LogRow& a, const LogRow& b) { return a.temperature_degf < b.temperature_degf; });
  return high->temperature_degf - low->temperature_degf;
}

}  // namespace

std::optional<LeakEvidence> gather_evidence(const LeakTestPlan& plan, const LeakLog& rows) {
  const auto log = pressure_log(plan.gauge, rows);
  const auto steady = pressure_log(plan.gauge, without_slips(rows));
  if (!log || !steady) return std::nullopt;
  const double period_s = plan.limit.period_s;
  const auto as_read = worst_period(*log, period_s, LossKind::as_read);
  const auto corrected = worst_period(*log, period_s, LossKind::corrected);
  const auto steady_as_read = worst_period(*steady, period_s, LossKind::as_read);
  const auto steady_corrected = worst_period(*steady, period_s, LossKind::corrected);
  if (!as_read || !corrected || !steady_as_read || !steady_corrected) return std::nullopt;

  LeakEvidence evidence;
  evidence.plan = &plan;
  evidence.log = *log;
  evidence.logged = rows.has_temperature;
  evidence.full_minute = rows.duration_s() >= period_s - 1e-9;
  evidence.as_read = *as_read;
  evidence.corrected = *corrected;
  evidence.steady_as_read = *steady_as_read;
  evidence.steady_corrected = *steady_corrected;
  evidence.fit = fit_decay(decay_samples(*log));
  evidence.noise = reading_noise(
      rows, plan.gauge.is_static() ? assumed_reading_error_ft : assumed_reading_error_kt);
  const int freedom = static_cast<int>(rows.rows.size()) - 2;
  evidence.factor = std::sqrt(2.0) * student_factor_95(freedom < 3 ? 1'000 : freedom);
  evidence.per_degf = std::abs(plan.effect_per_degf);
  if (evidence.fit && freedom >= 3)
    evidence.fitted_noise = evidence.fit->noise_pa / pascals_per_unit(plan);
  evidence.start_differential_pa = plan.gauge.differential_pa(log->pressure_pa.front());
  return evidence;
}

double doubt_to_pass(const LeakEvidence& evidence) {
  return evidence.factor * std::max(evidence.noise.overall, evidence.fitted_noise);
}

double doubt_to_fail(const LeakEvidence& evidence) {
  return evidence.factor * evidence.noise.typical;
}

double highest_loss(const LeakEvidence& evidence) {
  const double raised =
      evidence.start_differential_pa > 0
          ? std::max(1.0, evidence.plan->differential_pa / evidence.start_differential_pa)
          : 1;
  const double doubt = evidence.logged ? correction_doubt(evidence, evidence.corrected)
                                       : unseen_drift_to_pass_degf * evidence.per_degf;
  return (evidence.corrected.corrected + doubt_to_pass(evidence) + doubt) * raised;
}

double lowest_loss(const LeakEvidence& evidence, LossKind kind) {
  double least = 0;
  bool first = true;
  const bool corrected = kind == LossKind::corrected;
  for (const PeriodLoss& loss : {corrected ? evidence.corrected : evidence.as_read,
                                 corrected ? evidence.steady_corrected : evidence.steady_as_read}) {
    const double doubt = corrected && evidence.logged
                             ? correction_doubt(evidence, loss)
                             : unseen_drift_to_fail_degf * evidence.per_degf;
    const double lowered =
        loss.start_differential_pa > 0
            ? std::min(1.0, evidence.plan->differential_pa / loss.start_differential_pa)
            : 1;
    const double low =
        ((corrected ? loss.corrected : loss.loss) - doubt_to_fail(evidence) - doubt) * lowered;
    least = first ? low : std::min(least, low);
    first = false;
  }
  return least;
}

bool temperature_contradicted(const LeakEvidence& evidence) {
  if (!evidence.logged || !evidence.fit || !evidence.fit->temperature_excess) return false;
  if (warmest_change_degf(evidence) < least_telling_change_degf) return false;
  const double factor = student_factor_95(static_cast<int>(evidence.log.log.rows.size()) - 3);
  return std::abs(*evidence.fit->temperature_excess) -
             factor * evidence.fit->temperature_excess_error >
         0.5;
}

double largest_rise(const LeakEvidence& evidence) {
  const LeakLog smooth = without_slips(evidence.log.log);
  const double start_k = kelvins_from_degf(smooth.rows.front().temperature_degf);
  double lowest = 0, rise = 0;
  bool first = true;
  for (const LogRow& row : smooth.rows) {
    double reading = row.reading;
    if (evidence.logged) {
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
  if (!evidence.logged) return noise + unseen_drift_to_fail_degf * evidence.per_degf;
  return noise + evidence.per_degf * (evidence.log.log.temperature_step_degf +
                                      share_not_followed * warmest_change_degf(evidence) + 0.1);
}

double longest_gap_in_s(const LeakLog& log) {
  double longest_s = 0;
  for (std::size_t i = 1; i < log.rows.size(); ++i)
    longest_s = std::max(longest_s, log.rows[i].time_s - log.rows[i - 1].time_s);
  return longest_s;
}

}  // namespace linewright
