#pragma once
// Which way three corners turn.

#include <cmath>
#include <limits>

#include "model/vector.hpp"

namespace linewright {

/// +1 where a, b, c turn left, -1 right, 0 where they are in line as far as doubles can tell.
inline int side(Vec2 a, Vec2 b, Vec2 c) {
  const double left = (b.u - a.u) * (c.v - a.v);
  const double right = (b.v - a.v) * (c.u - a.u);
  const double doubt =
      8 * std::numeric_limits<double>::epsilon() * (std::abs(left) + std::abs(right));
  if (left - right > doubt) return 1;
  return right - left > doubt ? -1 : 0;
}

}  // namespace linewright
