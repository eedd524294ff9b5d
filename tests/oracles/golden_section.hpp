#pragma once
// The least value of a convex function by golden section: slow, and with nothing to go wrong.

#include <algorithm>

namespace linewright::oracles {

/// Looks at both ends, and in between until no more than `tolerance` is left.
template <typename Function>
double least_by_golden_section(const Function& function, double lo, double hi, double tolerance) {
  constexpr double golden = 0.61803398874989484820;
  double best = std::min(function(lo), function(hi));
  double left = hi - golden * (hi - lo);
  double right = lo + golden * (hi - lo);
  double left_value = function(left);
  double right_value = function(right);
  while (hi - lo > tolerance && left < right) {
    best = std::min({best, left_value, right_value});
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
  }
  return std::min({best, left_value, right_value});
}

}  // namespace linewright::oracles
