#pragma once
// A line as pieces to be measured, with its free-play envelope.

#include <memory>
#include <span>
#include <vector>

#include "geometry/bounds.hpp"
#include "geometry/envelope.hpp"
#include "lines/prepared.hpp"

namespace linewright {

/// Neighbouring chords in one box, so that far ones are passed over together.
struct ChordBlock {
  std::size_t first = 0;  ///< as a number of `Stretch::chord`
  std::size_t end = 0;
  Bounds bounds;
};

/// A stretch of a route in which one envelope holds, as chords none longer than
/// `longest_chord_in`, cut wherever something begins or ends to count: sleeves, what attachments
/// sweep over, and the zones about ends, supports and frame crossings. So what holds in the middle
/// of a chord holds for all of it, wherever the line's points stand. The stretches of one line
/// share its chords, and so does a copy.
struct Stretch {
  const PreparedRoute* route = nullptr;
  double start_in = 0;
  double end_in = 0;
  ReachEnvelope envelope;
  std::shared_ptr<const std::vector<PathChord>> of_chords;
  std::vector<ChordBlock> blocks;     ///< which of them are in the stretch
  Bounds bounds;                      ///< of the chords
  double thickest_radius_in = 0;      ///< of the whole route
  const Node* swings_with = nullptr;  ///< the end that this is swept by; nullptr where it hangs

  const PathChord& chord(std::size_t number) const { return (*of_chords)[number]; }
  std::span<const PathChord> chords() const {
    if (blocks.empty()) return {};
    return {&chord(blocks.front().first), blocks.back().end - blocks.front().first};
  }
};

/// Chords no longer than this, so that what counts near a place is decided finely enough.
inline constexpr double longest_chord_in = 0.5;

/// Gives the stretch its chords, with their blocks and bounds.
void take_chords(Stretch& stretch, std::vector<PathChord> chords);

Stretch make_stretch(const PreparedRoute& route, double start_in, double end_in,
                     const ReachEnvelope& envelope = {});
/// The same of a part of a stretch that was made, whose chords it takes where they are cut at both
/// ends.
Stretch stretch_of(const Stretch& whole, double start_in, double end_in,
                   const ReachEnvelope& envelope);

}  // namespace linewright
