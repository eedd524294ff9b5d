#include "planning/leak_noise.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace linewright {

namespace {

constexpr std::size_t fewest_values = 5;
constexpr double deviation_from_median = 1.4826;
constexpr std::array reading_steps{20.0, 10.0, 5.0, 2.0, 1.0, 0.5, 0.2, 0.1};
constexpr std::array temperature_steps{2.0, 1.0, 0.5, 0.2};

double coarsest_step(const std::vector<double>& values, std::span<const double> steps,
                     double last_place) {
  for (const double step : steps) {
    const auto whole = [step](double value) {
      return std::abs(std::remainder(value, step)) < 1e-9;
    };
    if (step > last_place && std::all_of(values.begin(), values.end(), whole)) return step;
  }
  return last_place;
}

/// Distances to the line between the neighbours, each over what noise of one would make of it.
std::vector<double> deviations(const LogSeries& series) {
  const auto& [time_s, value, step] = series;
  std::vector<double> all;
  for (std::size_t i = 1; i + 1 < value.size(); ++i) {
    const double part = (time_s[i] - time_s[i - 1]) / (time_s[i + 1] - time_s[i - 1]);
    const double line = value[i - 1] + (value[i + 1] - value[i - 1]) * part;
    all.push_back(std::abs(value[i] - line) / std::sqrt(1 + part * part + (1 - part) * (1 - part)));
  }
  return all;
}

struct Third {
  double mean = 0;
  double count = 0;
};

Third third_of(const LogSeries& series, int which) {
  const double start_s = series.time_s.front();
  const double third_s = (series.time_s.back() - start_s) / 3;
  Third third;
  for (std::size_t i = 0; i < series.value.size(); ++i) {
    const int in = std::min(2, static_cast<int>((series.time_s[i] - start_s) / third_s));
    if (in != which) continue;
    third.mean += series.value[i];
    ++third.count;
  }
  if (third.count > 0) third.mean /= third.count;
  return third;
}

SeriesMove move_between(const Third& a, const Third& b, double noise) {
  if (a.count == 0 || b.count == 0) return {};
  return {std::abs(a.mean - b.mean), noise * std::sqrt(1 / a.count + 1 / b.count)};
}

}  // namespace

LogSeries reading_series(const LeakLog& log) {
  LogSeries series;
  for (const LogRow& row : log.rows) {
    series.time_s.push_back(row.time_s);
    series.value.push_back(row.reading);
  }
  series.step = coarsest_step(series.value, reading_steps, log.reading_step);
  return series;
}

LogSeries temperature_series(const LeakLog& log) {
  LogSeries series;
  for (const LogRow& row : log.rows) {
    series.time_s.push_back(row.time_s);
    series.value.push_back(row.temperature_degf);
  }
  series.step = coarsest_step(series.value, temperature_steps, log.temperature_step_degf);
  return series;
}

ReadingNoise series_noise(const LogSeries& series, double assumed) {
  // Rounding to a step is even over the step: its standard deviation is the step over root 12.
  const double rounding = series.step / std::sqrt(12.0);
  if (series.value.size() < fewest_values) {
    const double either = std::max(assumed, rounding);
    return {either, either};
  }
  std::vector<double> strays = deviations(series);
  double squares = 0;
  for (const double stray : strays) squares += stray * stray;
  const auto middle = strays.begin() + static_cast<std::ptrdiff_t>(strays.size() / 2);
  std::nth_element(strays.begin(), middle, strays.end());
  return {std::max(rounding, deviation_from_median * *middle),
          std::max(rounding, std::sqrt(squares / static_cast<double>(strays.size())))};
}

SeriesMove series_move(const LogSeries& series, double noise) {
  SeriesMove most;
  for (const auto& [a, b] : {std::pair{0, 1}, {1, 2}, {0, 2}}) {
    const SeriesMove move = move_between(third_of(series, a), third_of(series, b), noise);
    if (move.moved > most.moved) most = move;
  }
  return most;
}

SeriesMove late_move(const LogSeries& series, double noise) {
  return move_between(third_of(series, 1), third_of(series, 2), noise);
}

bool is_beyond_scatter(const SeriesMove& move, std::size_t values) {
  return move.moved > 5 * (1 + 4 / static_cast<double>(values)) * move.error;
}

double slope_change_per_s(const LogSeries& series) {
  const std::size_t count = series.value.size();
  if (count < 4) return 0;
  const double half_s = (series.time_s.back() - series.time_s.front()) / 2;
  const double middle_s = series.time_s.front() + half_s;
  // Polynomials made orthogonal over the rows: what is left of the square once its mean and slope
  // are taken out.
  double mean = 0, mean_square = 0;
  for (const double time_s : series.time_s) {
    const double x = (time_s - middle_s) / half_s;
    mean += x / static_cast<double>(count);
    mean_square += x * x / static_cast<double>(count);
  }
  double spread = 0, third_power = 0;
  for (const double time_s : series.time_s) {
    const double x = (time_s - middle_s) / half_s;
    spread += (x - mean) * (x - mean);
    third_power += (x - mean) * (x * x - mean_square);
  }
  double product = 0, square = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const double x = (series.time_s[i] - middle_s) / half_s;
    const double bow = x * x - mean_square - third_power / spread * (x - mean);
    product += bow * series.value[i];
    square += bow * bow;
  }
  return square > 0 ? 2 * product / square / (half_s * half_s) : 0;
}

}  // namespace linewright
