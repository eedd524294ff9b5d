#pragma once
// How far a line can move sideways between two supports: the free-play envelope about its drawn
// centreline.

namespace linewright {

/// Which outline of the envelope is meant. `likely` is the shape that surplus length and load give
/// by beam or string theory; `bound` is what no shape of that length can leave.
enum class Reach { none, likely, bound };

/// Envelope of one span. Both outlines are concave along the span, which the search for the least
/// margin rests on. Inches; distances are along the route.
///
/// Likely, at fraction t of the span: play + bow · shape(t) + sag · 4t(1 − t), where shape is the
/// parabola 4t(1 − t) of a slack string or sin(πt) of a clamped tube.
/// Bound: play + the ellipse whose foci are the supports and whose string is the line, half-width
/// ½√((L + δ)² − L²) in the middle, + sag · 4t(1 − t) + what the bends can spread + the swing of
/// a free end.
///
/// A limp line drawn with a bow, longer than the straight between its supports, can take any shape
/// within the ellipsoid about that straight, so the bound goes as far from the drawn line: by the
/// half-width of that ellipsoid and by what the drawn line lies off the straight.
struct ReachEnvelope {
  double start_in = 0;
  double end_in = 0;  ///< past the route's end where the span goes on over a hanging fitting
  double play_first_in = 0;
  double play_last_in = 0;
  /// An end that an arm swings comes in toward the other by so much: so far in, the play is all of
  /// that of its own side; from there it changes evenly.
  double full_play_first_in = 0;
  double full_play_last_in = 0;
  double surplus_in = 0;  ///< δ
  /// A cable slides in its guides: what it has over anywhere can gather in any part of it.
  bool surplus_gathers = false;
  double bow_in = 0;
  bool clamped_shape = false;
  double sag_in = 0;
  double bound_half_width_in = 0;
  double drawn_excess_in = 0;  ///< limp lines: drawn length less the straight between the supports
  double drawn_offset_in = 0;  ///< limp lines: the farthest that the drawn line is from it
  double swing_first_in =
      0;  ///< bound at an end that nothing holds, falling to nothing at the other
  double swing_last_in = 0;
  double bend_spread_in = 0;  ///< a springy line spreads its bends toward the widest that fit

  double width_in(Reach reach, double distance_in) const;
  /// No place of the span is wider than this.
  double widest_in(Reach reach) const;
};

/// The envelope of the part of a span from `start_in` to `end_in`, once supports with `play_in`
/// stand there: surplus and bows shrink with the length, sags with `sag_power` (4 for a beam, 2 for
/// a string). A surplus that gathers stays what it is.
ReachEnvelope shortened(const ReachEnvelope& span, double start_in, double end_in, double play_in,
                        int sag_power);

}  // namespace linewright
