#pragma once
// One-dimensional minima on which every distance here rests.

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>
#include <vector>

namespace linewright {

struct Minimum {
  double at = 0;
  double value = 0;
};

/// Least value of a convex function on [lo, hi], found by golden section. The place is good to
/// `tolerance` (absolute), or to the square root of machine precision near a smooth minimum; the
/// value then errs by far less. Ends are always looked at, so a monotone function is exact.
template <typename Function>
Minimum minimise_convex(const Function& function, double lo, double hi, double tolerance = 1e-9) {
  Minimum best{lo, function(lo)};
  const auto offer = [&best](double at, double value) {
    if (value < best.value) best = {at, value};
  };
  offer(hi, function(hi));
  constexpr double golden = 0.61803398874989484820;
  double left = hi - golden * (hi - lo);
  double right = lo + golden * (hi - lo);
  double left_value = function(left);
  double right_value = function(right);
  while (hi - lo > tolerance) {
    offer(left, left_value);
    offer(right, right_value);
    if (left_value <= right_value) {
      hi = right;
      right = left;
      right_value = left_value;
      left = hi - golden * (hi - lo);
      left_value = function(left);
    } else {
      lo = left;
      left = right;
      left_value = right_value;
      right = lo + golden * (hi - lo);
      right_value = function(right);
    }
    if (left >= right) break;  // the interval is down to neighbouring doubles
  }
  offer(left, left_value);
  offer(right, right_value);
  return best;
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
