#pragma once
// Numbers to the digits that they are worth. Those beyond are one machine's mathematics: they
// differ from one to the next.

#include <cmath>

namespace linewright {

/// Parts of an inch to which a place is told: where two bodies come nearest to each other is known
/// to half the digits of how near they come.
inline constexpr double parts_of_place = 1e6;

/// `value` to the nearest of `parts` parts of one; as it is where a double is coarser.
inline double to_parts(double value, double parts) {
  constexpr double most = 1e15;
  return std::abs(value) * parts < most ? std::round(value * parts) / parts : value;
}

}  // namespace linewright
