#include "planning/leak_balance.hpp"

#include <cmath>

#include "planning/least_squares.hpp"

namespace linewright {

namespace {

double integral_pa_s(double before_pa, double after_pa, double time_s) {
  const double ratio = before_pa > 0 && after_pa > 0 ? before_pa / after_pa : 1;
  // Near a ratio of one the logarithm loses its digits, and a line does as well.
  if (std::abs(ratio - 1) < 1e-4) return (before_pa + after_pa) / 2 * time_s;
  return (before_pa - after_pa) / std::log(ratio) * time_s;
}

/// The columns of one steady leak: a start and a slope, orthogonal.
std::vector<Column> leak_columns(const AirBalance& balance) {
  const Column start(balance.size(), 1.0);
  return {start, without(balance.driven_pa_s, {start})};
}

}  // namespace

AirBalance air_balance(const std::vector<DecaySample>& samples, std::size_t most) {
  AirBalance balance;
  const std::size_t count = samples.size();
  const std::size_t picked = std::min(count, most);
  double driven_pa_s = 0;
  std::size_t taken = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const DecaySample& sample = samples[i];
    const auto as_read = [&](std::size_t at) {
      return samples[at].differential_pa + samples[at].temperature_pa;
    };
    if (i > 0)
      driven_pa_s +=
          integral_pa_s(as_read(i - 1), as_read(i), sample.time_s - samples[i - 1].time_s);
    if (picked > 1 && i != taken * (count - 1) / (picked - 1)) continue;
    ++taken;
    balance.time_s.push_back(sample.time_s);
    balance.steady_pa.push_back(sample.differential_pa);
    balance.driven_pa_s.push_back(driven_pa_s);
    balance.temperature_pa.push_back(sample.temperature_pa);
  }
  return balance;
}

double balance_misfit_pa(const AirBalance& balance) {
  if (balance.size() < 3) return 0;
  const Column left = without(balance.steady_pa, leak_columns(balance));
  return std::sqrt(product(left, left) / static_cast<double>(balance.size() - 2));
}

TemperatureShare temperature_share(const AirBalance& balance) {
  TemperatureShare share;
  if (balance.size() < 5) return share;
  const std::vector<Column> leak = leak_columns(balance);
  const Column left = without(balance.steady_pa, leak);
  const Column temperature = without(balance.temperature_pa, leak);
  const double square = product(temperature, temperature);
  if (!(square > 1e-6 * product(balance.temperature_pa, balance.temperature_pa))) return share;
  const auto count = static_cast<double>(balance.size());
  share.excess = product(left, temperature) / square;
  const Column rest = without(left, {temperature});
  share.error = std::sqrt(product(rest, rest) / (count - 3) / square);
  share.spread_pa = std::sqrt(square / count);
  return share;
}

}  // namespace linewright
