#include "lines/motion/merged_spans.hpp"

#include <algorithm>

#include "physics/deflection.hpp"

namespace linewright {

ReachEnvelope merged_envelope(const PreparedRoute& route, const ReachEnvelope& before,
                              const ReachEnvelope& after) {
  ReachEnvelope merged;
  merged.start_in = before.start_in;
  merged.end_in = after.end_in;
  merged.play_first_in = before.play_first_in;
  merged.play_last_in = after.play_last_in;
  merged.surplus_in = before.surplus_in + after.surplus_in;
  const double length = merged.end_in - merged.start_in;
  const Segment3 straight{route.centreline.at(merged.start_in), route.centreline.at(merged.end_in)};
  const double chord = std::min(distance(straight.a, straight.b), length);
  merged.bow_in = slack_string_bow_in(length, merged.surplus_in);
  merged.drawn_excess_in = length - chord;
  for (const PathChord& piece : route.centreline.chords(merged.start_in, merged.end_in))
    merged.drawn_offset_in =
        std::max(merged.drawn_offset_in, nearest(piece.to, straight).distance_in);
  merged.bound_half_width_in =
      std::max(merged.bow_in, ellipsoid_half_width_in(chord, length + merged.surplus_in));
  return merged;
}

}  // namespace linewright
