#pragma once
// Which of several equally near places is the one to name. Rounding must not choose it: it changes
// with the way in which an aeroplane is written down.

#include <algorithm>
#include <cmath>

#include "geometry/centreline.hpp"
#include "model/place_order.hpp"

namespace linewright {

/// Margins along a chord that differ by less than this are those of lines side by side.
inline constexpr double level_in = 1e-9;

/// Of the places on a chord whose margin is as small as at the fraction `at`, the one that lies
/// before the others. `margin` is a convex function of the fraction, least at `at`.
template <typename Margin>
double first_place(const Margin& margin, const PathChord& chord, double at) {
  const double end = lies_before(chord.to, chord.from) ? 1 : 0;
  const double level = margin(at) + level_in;
  if (margin(end) <= level) return end;
  // A round minimum is level over so little that it is one place.
  constexpr double one_place_in = 1e-3;
  const double length = distance(chord.from, chord.to);
  const double beyond =
      at + (end - at) * std::min(1.0, one_place_in / (std::abs(end - at) * length));
  if (!(margin(beyond) <= level)) return at;
  double in = beyond;
  double out = end;
  while (std::abs(out - in) * length > level_in) {
    const double middle = (in + out) / 2;
    if (middle == in || middle == out) break;
    (margin(middle) <= level ? in : out) = middle;
  }
  return in;
}

}  // namespace linewright
