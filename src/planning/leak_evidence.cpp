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

std::vector<DecaySample> picked_samples(const AirBalance& balance) {
  std::vector<DecaySample> samples;
  for (std::size_t i = 0; i < balance.size(); ++i)
    samples.push_back({balance.time_s[i], balance.steady_pa[i], balance.temperature_pa[i]});
  return samples;
}

double assumed_reading_error(const LeakTestPlan& plan) {
  return plan.gauge.is_static() ? assumed_reading_error_ft : assumed_reading_error_kt;
}

/// The curve is fitted to as many readings as decide it.
constexpr std::size_t most_fitted = 60;

LeakLog without_temperature(LeakLog log) {
  log.has_temperature = false;
  return log;
}

/// Temperatures count only where the thermometer moved.
LeakLog as_judged(const LeakLog& log) {
  return thermometer_evidence(log).sight == ThermometerSight::moves ? log
                                                                    : without_temperature(log);
}

/// Scatter of one reading, thermometer and all, as a pressure.
double scatter_pa(const LeakTestPlan& plan, const LeakLog& log) {
  const ThermometerEvidence thermometer = thermometer_evidence(log);
  const double seen = thermometer.sight == ThermometerSight::moves ? thermometer.noise_degf : 0;
  const double noise = series_noise(reading_series(log), assumed_reading_error(plan)).typical;
  return std::hypot(noise, seen * plan.effect_per_degf) * pascals_per_unit(plan);
}

/// The readings to judge. Those from before the needle fell as one leak lets it are left out, where
/// a full period is left; where it was held up at first they stay, for they cannot make the worst
/// period look better.
LeakLog judged_rows(LeakEvidence& evidence, const LeakLog& rows) {
  evidence.settled_s = rows.duration_s();
  if (!evidence.settling.seen) return rows;
  const double period_s = evidence.plan->limit.period_s;
  const LeakLog later = from_time(rows, evidence.settling.settled_s);
  evidence.settled_s = later.rows.empty() ? 0 : later.duration_s();
  evidence.settled = later.rows.size() >= 3 && evidence.settled_s >= period_s - 1e-9;
  return evidence.settled && evidence.settling.amplitude_pa > 0 ? later : rows;
}

/// False where a worst period leaves the gauge.
bool set_losses(LeakEvidence& evidence, const PressureLog& steady) {
  const LeakTestPlan& plan = *evidence.plan;
  const double period_s = plan.limit.period_s;
  bool found = true;
  const auto set = [&](PeriodLoss& loss, const PressureLog& log, LossKind kind, double full_pa) {
    const auto worst = worst_period_at(log, period_s, kind, full_pa);
    if (worst)
      loss = *worst;
    else
      found = false;
  };
  set(evidence.as_read, evidence.log, LossKind::as_read, 0);
  set(evidence.corrected, evidence.log, LossKind::corrected, 0);
  set(evidence.steady_as_read, steady, LossKind::as_read, 0);
  set(evidence.steady_corrected, steady, LossKind::corrected, 0);
  set(evidence.most_as_read, evidence.log, LossKind::as_read, plan.differential_pa);
  set(evidence.most_corrected, evidence.log, LossKind::corrected, plan.differential_pa);
  return found;
}

void set_noise(LeakEvidence& evidence) {
  const LeakTestPlan& plan = *evidence.plan;
  const LeakLog& rows = evidence.log.log;
  evidence.noise = series_noise(reading_series(rows), assumed_reading_error(plan));
  const int freedom = static_cast<int>(rows.rows.size()) - 2;
  evidence.factor = std::sqrt(2.0) * student_factor_95(freedom < 3 ? 1'000 : freedom);
  evidence.balance = air_balance(decay_samples(evidence.log), most_fitted);
  evidence.fit = fit_decay(picked_samples(evidence.balance));
  if (freedom >= 3)
    evidence.fitted_noise = balance_misfit_pa(evidence.balance) / pascals_per_unit(plan);
}

}  // namespace

std::optional<LeakEvidence> gather_evidence(const LeakTestPlan& plan, const LeakLog& rows) {
  const auto whole = pressure_log(plan.gauge, as_judged(rows));
  if (!whole) return std::nullopt;
  LeakEvidence evidence;
  evidence.plan = &plan;
  evidence.settling =
      find_settling(air_balance(decay_samples(*whole), most_fitted), scatter_pa(plan, rows),
                    negligible_share * plan.limit_change_pa);
  const LeakLog judged = judged_rows(evidence, rows);
  evidence.thermometer = thermometer_evidence(judged);
  const auto log = pressure_log(plan.gauge, as_judged(judged));
  const auto steady = pressure_log(plan.gauge, without_slips(as_judged(judged)));
  if (!log || !steady) return std::nullopt;
  evidence.log = *log;
  evidence.full_minute = evidence.duration_s() >= plan.limit.period_s - 1e-9;
  evidence.per_degf = std::abs(plan.effect_per_degf);
  evidence.start_differential_pa = plan.gauge.differential_pa(log->pressure_pa.front());
  if (!set_losses(evidence, *steady)) return std::nullopt;
  set_noise(evidence);
  evidence.odd = odd_readings(rows, series_noise(reading_series(rows), evidence.noise.typical),
                              share_that_stands_out * plan.limit.loss);
  return evidence;
}

double pascals_per_unit(const LeakTestPlan& plan) {
  return plan.limit_change_pa / plan.limit.loss;
}

double longest_gap_in_s(const LeakLog& log) {
  double longest_s = 0;
  for (std::size_t i = 1; i < log.rows.size(); ++i)
    longest_s = std::max(longest_s, log.rows[i].time_s - log.rows[i - 1].time_s);
  return longest_s;
}

}  // namespace linewright
