#pragma once
// Chords of a line and what bounds them; shared by the searches for its nearest neighbours.

#include <algorithm>
#include <cmath>

#include "lines/near/stretch.hpp"

namespace linewright {

/// Margins nearer to each other than this are equal.
inline constexpr double tie_in = 1e-7;

inline Bounds bounds_of(const PathChord& chord) {
  Bounds bounds{chord.from, chord.from};
  include(bounds, chord.to);
  return bounds;
}

inline double distance_along(const PathChord& chord, double t) {
  return chord.start_in + (chord.end_in - chord.start_in) * t;
}

/// Straight chords are exact; an arc may lie up to the sagitta outside of its chord.
inline double chord_error_in(const PathChord& chord) {
  const double straight = distance(chord.from, chord.to);
  return chord.end_in - chord.start_in - straight > 1e-12 ? Centreline::default_sagitta_in : 0.0;
}

/// Upper bound on the envelope over a chord. A concave function lies below the line through any two
/// of its points, outside of them: three values bound it.
inline double widest_over(const Stretch& stretch, Reach reach, const PathChord& chord) {
  if (reach == Reach::none) return 0;
  const double start = stretch.envelope.width_in(reach, chord.start_in);
  const double middle = stretch.envelope.width_in(reach, distance_along(chord, 0.5));
  const double end = stretch.envelope.width_in(reach, chord.end_in);
  return std::max({middle, 2 * middle - start, 2 * middle - end});
}

/// The most that radius, sagitta and reach take off a distance anywhere on the chord.
inline double taken_off_by(const Stretch& stretch, Reach reach, const PathChord& chord) {
  return stretch.route->girth_radius_in(distance_along(chord, 0.5)) +
         Centreline::default_sagitta_in + widest_over(stretch, reach, chord);
}

}  // namespace linewright
