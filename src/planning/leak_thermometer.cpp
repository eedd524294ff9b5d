#include "planning/leak_thermometer.hpp"

#include <algorithm>

#include "planning/leak_noise.hpp"

namespace linewright {

namespace {

constexpr double assumed_temperature_error_degf = 0.1;  ///< short logs
/// Of two readings rounded to a step the difference errs by more than this share of the step once
/// in twenty times: it is spread as a triangle, 1 - sqrt(0.05).
constexpr double error_in_steps = 0.776;
/// 95 % of a difference of two normal errors, in their standard deviations: 1.96 times root two.
constexpr double error_in_deviations = 2.77;

}  // namespace

ThermometerEvidence thermometer_evidence(const LeakLog& log) {
  ThermometerEvidence evidence;
  if (!log.has_temperature) return evidence;
  const LogSeries series = temperature_series(log);
  const double noise = series_noise(series, assumed_temperature_error_degf).overall;
  const SeriesMove move = series_move(series, noise);
  evidence.moved_degf = move.moved;
  evidence.noise_degf = noise;
  evidence.error_degf = std::max(error_in_steps * series.step, error_in_deviations * noise);
  evidence.bend_degf_per_s2 = slope_change_per_s(series);
  const bool moves = move.moved >= std::max(least_thermometer_move_degf, 1.5 * series.step) &&
                     is_beyond_scatter(move, series.value.size());
  evidence.sight = moves ? ThermometerSight::moves : ThermometerSight::still;
  return evidence;
}

double unseen_by_lag_degf(const ThermometerEvidence& thermometer, double period_s) {
  return longest_thermometer_lag_s * thermometer.bend_degf_per_s2 * period_s;
}

}  // namespace linewright
