#include "planning/leak_fit.hpp"

#include <algorithm>
#include <cmath>

#include "geometry/minimise.hpp"

namespace linewright {

namespace {

/// Huber's bound: residuals beyond so many standard deviations count as slips [from memory: robust
/// statistics text-books; 95 % efficient for normal noise].
constexpr double slip_bound = 1.345;
/// Median of absolute deviations to standard deviation, for normal noise [from memory].
constexpr double deviation_from_median = 1.4826;
constexpr int rounds = 6;

using Samples = std::vector<DecaySample>;
using Weights = std::vector<double>;

/// Best D0 for a rate and the weighted sum of squares it leaves.
struct Profile {
  double initial_pa = 0;
  double squares = 0;
};

Profile profile_at(const Samples& samples, const Weights& weights, double rate_per_s) {
  double product = 0, square = 0;
  for (std::size_t i = 0; i < samples.size(); ++i) {
    const double shape = std::exp(-rate_per_s * (samples[i].time_s - samples.front().time_s));
    product += weights[i] * samples[i].differential_pa * shape;
    square += weights[i] * shape * shape;
  }
  Profile profile{product / square, 0};
  for (std::size_t i = 0; i < samples.size(); ++i) {
    const double shape = std::exp(-rate_per_s * (samples[i].time_s - samples.front().time_s));
    const double left = samples[i].differential_pa - profile.initial_pa * shape;
    profile.squares += weights[i] * left * left;
  }
  return profile;
}

/// Rates to look at before refining: from a slow drift away to gone between two readings.
std::vector<double> rates_to_try(const Samples& samples) {
  const double duration_s = samples.back().time_s - samples.front().time_s;
  double shortest_s = duration_s;
  for (std::size_t i = 1; i < samples.size(); ++i)
    shortest_s = std::min(shortest_s, samples[i].time_s - samples[i - 1].time_s);
  std::vector<double> rates;
  for (double rate = 2; rate > 1e-4; rate /= 2) rates.push_back(-rate / duration_s);
  rates.push_back(0);
  for (double rate = 1e-4; rate < 20 * duration_s / shortest_s; rate *= 1.6)
    rates.push_back(rate / duration_s);
  return rates;
}

double best_rate(const Samples& samples, const Weights& weights, const std::vector<double>& rates) {
  std::size_t best = 0;
  double least = profile_at(samples, weights, rates[0]).squares;
  for (std::size_t i = 1; i < rates.size(); ++i) {
    const double squares = profile_at(samples, weights, rates[i]).squares;
    if (squares < least) best = i, least = squares;
  }
  const double low = rates[best == 0 ? 0 : best - 1];
  const double high = rates[std::min(best + 1, rates.size() - 1)];
  return minimise_convex([&](double rate) { return profile_at(samples, weights, rate).squares; },
                         low, high, (high - low) * 1e-10)
      .at;
}

std::vector<double> residuals(const Samples& samples, const DecayFit& fit) {
  std::vector<double> left;
  for (const DecaySample& sample : samples)
    left.push_back(sample.differential_pa - fit.differential_pa(sample.time_s));
  return left;
}

double spread(std::vector<double> left) {
  for (double& value : left) value = std::abs(value);
  const auto middle = left.begin() + static_cast<std::ptrdiff_t>(left.size() / 2);
  std::nth_element(left.begin(), middle, left.end());
  return deviation_from_median * *middle;
}

Weights weights_for(const std::vector<double>& left) {
  const double bound = slip_bound * spread(left);
  Weights weights;
  for (const double value : left)
    weights.push_back(bound > 0 && std::abs(value) > bound ? bound / std::abs(value) : 1);
  return weights;
}

void add_errors(DecayFit& fit, const Samples& samples, const Weights& weights,
                const std::vector<double>& left) {
  double squares = 0;
  for (std::size_t i = 0; i < left.size(); ++i) squares += weights[i] * left[i] * left[i];
  fit.noise_pa = std::sqrt(squares / static_cast<double>(samples.size() - 2));
  // The curve's slopes by D0 and by k; of the latter counts what the former does not explain.
  double by_start = 0, by_both = 0, by_rate = 0;
  for (std::size_t i = 0; i < samples.size(); ++i) {
    const double elapsed_s = samples[i].time_s - fit.start_s;
    const double shape = std::exp(-fit.rate_per_s * elapsed_s);
    const double rate_slope = -fit.initial_pa * elapsed_s * shape;
    by_start += weights[i] * shape * shape;
    by_both += weights[i] * shape * rate_slope;
    by_rate += weights[i] * rate_slope * rate_slope;
  }
  const double own = by_rate - by_both * by_both / by_start;
  if (own > 1e-9 * by_rate) fit.rate_error_per_s = fit.noise_pa / std::sqrt(own);
}

}  // namespace

double DecayFit::differential_pa(double time_s) const {
  return initial_pa * std::exp(-rate_per_s * (time_s - start_s));
}

std::optional<DecayFit> fit_decay(const std::vector<DecaySample>& samples) {
  if (samples.size() < 3) return std::nullopt;
  DecayFit fit;
  fit.start_s = samples.front().time_s;
  Weights weights(samples.size(), 1.0);
  std::vector<double> left;
  const std::vector<double> rates = rates_to_try(samples);
  for (int round = 0; round < rounds; ++round) {
    fit.rate_per_s = best_rate(samples, weights, rates);
    fit.initial_pa = profile_at(samples, weights, fit.rate_per_s).initial_pa;
    left = residuals(samples, fit);
    if (round + 1 < rounds) weights = weights_for(left);
  }
  if (!std::isfinite(fit.initial_pa) || !std::isfinite(fit.rate_per_s)) return std::nullopt;
  add_errors(fit, samples, weights, left);
  return fit;
}

// The expansion of Cornish and Fisher about the normal 1.95996 [from memory: statistics handbooks].
double student_factor_95(int degrees_of_freedom) {
  constexpr double z = 1.959964;
  constexpr double z2 = z * z;
  const double n = std::max(degrees_of_freedom, 3);
  return z + z * (z2 + 1) / (4 * n) + z * ((5 * z2 + 16) * z2 + 3) / (96 * n * n) +
         z * (((3 * z2 + 19) * z2 + 17) * z2 - 15) / (384 * n * n * n);
}

}  // namespace linewright
