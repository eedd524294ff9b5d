#pragma once
// A line as pieces to be measured, with its free-play envelope.

#include <vector>

#include "geometry/bounds.hpp"
#include "geometry/envelope.hpp"
#include "lines/prepared.hpp"

namespace linewright {

/// Neighbouring chords in one box, so that far ones are passed over together.
struct ChordBlock {
  std::size_t first = 0;
  std::size_t end = 0;
  Bounds bounds;
};

/// A stretch of a route in which one envelope holds, as chords none longer than
/// `longest_chord_in`, cut wherever something begins or ends to count: sleeves, what attachments
/// sweep over, and the zones about ends, supports and frame crossings. So what holds in the middle
/// of a chord holds for all of it, wherever the line's points stand.
struct Stretch {
  const PreparedRoute* route = nullptr;
  double start_in = 0;
  double end_in = 0;
  ReachEnvelope envelope;
  std::vector<PathChord> chords;
  std::vector<ChordBlock> blocks;
  Bounds bounds;                      ///< of the chords
  double thickest_radius_in = 0;      ///< of the whole route
  const Node* swings_with = nullptr;  ///< the end that this is swept by; nullptr where it hangs
};

/// Chords no longer than this, so that what counts near a place is decided finely enough.
inline constexpr double longest_chord_in = 0.5;

/// Fills in blocks and bounds from the chords.
void sort_into_blocks(Stretch& stretch);

Stretch make_stretch(const PreparedRoute& route, double start_in, double end_in,
                     const ReachEnvelope& envelope = {});

}  // namespace linewright
