#pragma once
// The order of places in the aeroplane, for a choice between equals.

#include <cmath>

#include "model/vector.hpp"

namespace linewright {

/// True where `a` lies farther forward than `b`; of places at one station, farther to the left; of
/// those, lower. Coordinates nearer to each other than 1e-5 in are equal.
inline bool lies_before(Vec3 a, Vec3 b) {
  constexpr double equal_in = 1e-5;
  if (std::abs(a.x - b.x) > equal_in) return a.x < b.x;
  if (std::abs(a.y - b.y) > equal_in) return a.y < b.y;
  return a.z < b.z - equal_in;
}

}  // namespace linewright
