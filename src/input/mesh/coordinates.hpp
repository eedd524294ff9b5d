#pragma once
// What a mesh's coordinates may be: finite, and not so far out that the units must be wrong.

#include <array>
#include <cmath>
#include <cstddef>
#include <string_view>

namespace linewright {

/// No aeroplane reaches this far from its datum.
inline constexpr double farthest_coordinate_in = 1e6;

/// True when all nine are finite and none is farther than `largest` from zero.
inline bool within(const std::array<float, 9>& corners, float largest) {
  bool all = true;
  for (const float coordinate : corners) all &= std::abs(coordinate) <= largest;
  return all;
}

/// The number that the whole word is. Throws MeshFault at `offset`, the word's place, where it is
/// none, not finite or beyond `largest`.
double read_coordinate(std::string_view word, std::size_t offset, double largest);

/// Throws MeshFault at `offset` unless the coordinate is finite and not beyond `largest`.
void check_coordinate(double coordinate, std::size_t offset, double largest);

}  // namespace linewright
