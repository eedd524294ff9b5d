#pragma once
// Which of several equally near places is the one to name. Rounding must not choose it: it changes
// with the way in which an aeroplane is written down.

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
  const double length = distance(chord.from, chord.to);
  double in = at;
  double out = end;
  while (std::abs(out - in) * length > level_in) {
    const double middle = (in + out) / 2;
    if (middle == in || middle == out) break;
    (margin(middle) <= level ? in : out) = middle;
  }
  // A round minimum is level over so little that it is one place.
  constexpr double one_place_in = 1e-3;
  return std::abs(in - at) * length > one_place_in ? in : at;
}

}  // namespace linewright
