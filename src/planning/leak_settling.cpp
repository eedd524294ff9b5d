#include "planning/leak_settling.hpp"

#include <algorithm>
#include <cmath>

#include "planning/least_squares.hpp"

namespace linewright {

namespace {

constexpr std::size_t fewest_readings = 6;
/// The share of the variance that settling must explain, against what is left without it.
constexpr double least_ratio_of_variances = 1.5;
/// Of Fisher's F with two more unknowns, over a grid of them: past it by chance in under one log of
/// a thousand where ten readings and more are left over [from memory: statistics tables].
constexpr double least_f = 12;

/// What may be left beside a settling, over the variance of one reading.
constexpr double most_left = 9;

std::vector<double> time_constants_s() {
  std::vector<double> all;
  for (double time_constant_s = 3; time_constant_s < slowest_settling_s; time_constant_s *= 1.08)
    all.push_back(time_constant_s);
  all.push_back(slowest_settling_s);
  return all;
}

Column settling_column(const AirBalance& balance, double time_constant_s) {
  Column column;
  for (const double time_s : balance.time_s)
    column.push_back(std::exp(-(time_s - balance.time_s.front()) / time_constant_s));
  return column;
}

/// How far a settling alone goes in the first minute, as a share of the whole of it.
double share_in_a_minute(double time_constant_s) {
  return 1 - std::exp(-60 / time_constant_s);
}

}  // namespace

Settling find_settling(const AirBalance& balance, double error_pa, double negligible_pa) {
  Settling settling;
  settling.settled_s = balance.time_s.front();
  if (balance.size() < fewest_readings) return settling;
  const Column start(balance.size(), 1.0);
  const std::vector<Column> leak{start, without(balance.driven_pa_s, {start})};
  const Column left = without(balance.steady_pa, leak);
  const double plain = product(left, left);
  double explained = 0;
  for (const double time_constant_s : time_constants_s()) {
    const Column column = without(settling_column(balance, time_constant_s), leak);
    const double square = product(column, column);
    if (!(square > 1e-9)) continue;
    const double amplitude_pa = product(left, column) / square;
    if (amplitude_pa * amplitude_pa * square <= explained) continue;
    explained = amplitude_pa * amplitude_pa * square;
    settling.amplitude_pa = amplitude_pa;
    settling.time_constant_s = time_constant_s;
  }
  if (explained == 0) return settling;
  const auto count = static_cast<double>(balance.size());
  const double variance = std::max((plain - explained) / (count - 4), error_pa * error_pa);
  const double in_a_minute_pa =
      std::abs(settling.amplitude_pa) * share_in_a_minute(settling.time_constant_s);
  settling.seen = plain / (count - 2) > least_ratio_of_variances * variance &&
                  explained / 2 > least_f * variance && in_a_minute_pa > negligible_pa &&
                  variance < most_left * error_pa * error_pa;
  if (settling.seen)
    settling.settled_s += settling.time_constant_s * std::log(in_a_minute_pa / negligible_pa);
  return settling;
}

bool settling_explains(const AirBalance& balance, double most_rate_per_s, double most_settling_pa,
                       double noise_pa) {
  const auto count = static_cast<double>(balance.size());
  // The mean square of so many residuals lies within three of its own standard deviations of the
  // noise's, sqrt(2 / n), in 99 cases of 100 and more.
  const double most = count * noise_pa * noise_pa * (1 + 3 * std::sqrt(2 / count));
  const Column start(balance.size(), 1.0);
  // Air that cools unseen makes a leak seem less than none.
  constexpr int rates = 10;
  for (const double time_constant_s : time_constants_s()) {
    const Column settling = without(settling_column(balance, time_constant_s), {start});
    const double square = product(settling, settling);
    for (int i = -rates; i <= rates; ++i) {
      Column left = balance.steady_pa;
      for (std::size_t row = 0; row < left.size(); ++row)
        left[row] += most_rate_per_s * i / rates * balance.driven_pa_s[row];
      left = without(left, {start});
      const double amplitude_pa =
          square > 0 ? std::clamp(product(left, settling) / square, 0.0, most_settling_pa) : 0;
      for (std::size_t row = 0; row < left.size(); ++row) left[row] -= amplitude_pa * settling[row];
      if (product(left, left) <= most) return true;
    }
  }
  return false;
}

}  // namespace linewright
