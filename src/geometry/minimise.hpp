#pragma once
// One-dimensional minima on which every distance here rests.

#include <algorithm>
#include <boost/math/tools/minima.hpp>
#include <cmath>
#include <cstdint>
#include <limits>
#include <queue>
#include <vector>

namespace linewright {

struct Minimum {
  double at = 0;
  double value = 0;
};

/// Least value of a convex function on [lo, hi], by Brent's method: parabolas where the function is
/// smooth, golden sections where it is not. The place is good to `tolerance` (a share of hi - lo),
/// or to the square root of machine precision near a smooth minimum; the value then errs by far
/// less. Ends are always looked at, so a monotone function is exact.
template <typename Function>
Minimum minimise_convex(const Function& function, double lo, double hi, double tolerance = 1e-9) {
  Minimum best{lo, function(lo)};
  const auto offer = [&best](double at, double value) {
    if (value < best.value) best = {at, value};
  };
  offer(hi, function(hi));
  if (!(hi > lo)) return best;
  // Brent's tolerance is relative to the place: on [1, 2] that is the same everywhere.
  const auto shifted = [&](double x) { return function(lo + (hi - lo) * (x - 1)); };
  const int bits = static_cast<int>(std::ceil(-std::log2(tolerance))) + 2;
  std::uintmax_t most_steps = 200;
  const auto [x, value] =
      boost::math::tools::brent_find_minima(shifted, 1.0, 2.0, bits, most_steps);
  offer(lo + (hi - lo) * (x - 1), value);
  return best;
}

/// Two places nearer to each other than this share of the range are one where a function is smooth:
/// the square root of machine precision.
inline constexpr double least_step = 0x1p-26;

/// The same in three looks where the function is least at an end, for one that is known much better
/// than by what it falls within `tolerance` of the range. One that is itself found by a search no
/// finer than this one is not: what that search leaves open would look like a rise.
template <typename Function>
Minimum minimise_known_convex(const Function& function, double lo, double hi, double tolerance) {
  if (hi > lo) {
    const double step = (hi - lo) * std::max(tolerance, least_step);
    const double low = function(lo);
    const double high = function(hi);
    if (low <= high && function(lo + step) >= low) return {lo, low};
    if (high <= low && function(hi - step) >= high) return {hi, high};
  }
  return minimise_convex(function, lo, hi, tolerance);
}

/// Least value on [lo, hi] of a function that changes by at most `slope` per unit: branch and
/// bound, so no dip can hide between samples. The value returned is attained, and no more than
/// `tolerance` above the true minimum.
template <typename Function>
Minimum minimise_bounded_slope(const Function& function, double lo, double hi, double slope,
                               double tolerance = 1e-6) {
  struct Interval {
    double middle, half, value;
    double bound;
    bool operator<(const Interval& other) const { return bound > other.bound; }
  };
  Minimum best{lo, function(lo)};
  const auto look = [&](double middle, double half) {
    const double value = function(middle);
    if (value < best.value) best = {middle, value};
    return Interval{middle, half, value, value - slope * half};
  };
  look(hi, 0);
  std::priority_queue<Interval> open;
  open.push(look((lo + hi) / 2, (hi - lo) / 2));
  while (!open.empty()) {
    const Interval next = open.top();
    open.pop();
    if (next.bound >= best.value - tolerance) break;
    const double quarter = next.half / 2;
    open.push(look(next.middle - quarter, quarter));
    open.push(look(next.middle + quarter, quarter));
  }
  return best;
}

}  // namespace linewright
