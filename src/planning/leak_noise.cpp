#include "planning/leak_noise.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace linewright {

namespace {

constexpr std::size_t fewest_rows = 5;
constexpr double deviation_from_median = 1.4826;

/// Distances to the line between the neighbours, each over what noise of one would make of it.
std::vector<double> deviations(const std::vector<LogRow>& rows) {
  std::vector<double> all;
  for (std::size_t i = 1; i + 1 < rows.size(); ++i) {
    const double part =
        (rows[i].time_s - rows[i - 1].time_s) / (rows[i + 1].time_s - rows[i - 1].time_s);
    const double line = rows[i - 1].reading + (rows[i + 1].reading - rows[i - 1].reading) * part;
    all.push_back(std::abs(rows[i].reading - line) /
                  std::sqrt(1 + part * part + (1 - part) * (1 - part)));
  }
  return all;
}

}  // namespace

double coarsest_step(const LeakLog& log) {
  for (const double step : std::array{20.0, 10.0, 5.0, 2.0}) {
    const auto whole = [step](const LogRow& row) {
      return std::abs(std::remainder(row.reading, step)) < 1e-9;
    };
    if (step > log.reading_step && std::all_of(log.rows.begin(), log.rows.end(), whole))
      return step;
  }
  return log.reading_step;
}

ReadingNoise reading_noise(const LeakLog& log, double assumed) {
  // Rounding to a step is even over the step: its standard deviation is the step over root 12.
  const double rounding = coarsest_step(log) / std::sqrt(12.0);
  if (log.rows.size() < fewest_rows) {
    const double either = std::max(assumed, rounding);
    return {either, either};
  }
  std::vector<double> strays = deviations(log.rows);
  double squares = 0;
  for (const double stray : strays) squares += stray * stray;
  const auto middle = strays.begin() + static_cast<std::ptrdiff_t>(strays.size() / 2);
  std::nth_element(strays.begin(), middle, strays.end());
  return {std::max(rounding, deviation_from_median * *middle),
          std::max(rounding, std::sqrt(squares / static_cast<double>(strays.size())))};
}

}  // namespace linewright
