#pragma once
// Where a line, its free-play envelope counted, comes nearest to structure or to another line.

#include <functional>
#include <map>
#include <optional>
#include <vector>

#include "geometry/envelope.hpp"
#include "geometry/prepared.hpp"

namespace linewright {

/// The place of least margin. `gap_in` is the free distance between the two surfaces there as drawn
/// (negative: they overlap), `margin_in` is what is left of it after the reach on both sides.
struct Approach {
  double gap_in = 0;
  double margin_in = 0;
  double distance_in = 0;  ///< along the line
  Vec3 on_line;
  Vec3 on_other;
  std::optional<Obstacle> obstacle;  ///< structure only
  double other_distance_in = 0;      ///< along the other line, lines only
};

/// Neighbouring chords in one box, so that far ones are passed over together.
struct ChordBlock {
  std::size_t first = 0;
  std::size_t end = 0;
  Bounds bounds;
};

/// A stretch of a route in which one envelope holds, as chords none longer than
/// `longest_chord_in`, cut where sleeves, and what attachments sweep over, begin and end.
struct Stretch {
  const PreparedRoute* route = nullptr;
  double start_in = 0;
  double end_in = 0;
  ReachEnvelope envelope;
  std::vector<PathChord> chords;
  std::vector<ChordBlock> blocks;
  Bounds bounds;                  ///< of the chords
  double thickest_radius_in = 0;  ///< of the whole route
};

/// Chords no longer than this, so that what counts near a place is decided finely enough.
inline constexpr double longest_chord_in = 0.5;

Stretch make_stretch(const PreparedRoute& route, double start_in, double end_in,
                     const ReachEnvelope& envelope = {});

/// Says whether an obstacle counts for the piece of the line around `distance_in`.
using Counts = std::function<bool(const Obstacle&, double distance_in)>;
/// Sorts obstacles into groups that are judged apart.
using Group = std::function<int(const Obstacle&)>;

/// Least margin for each group of obstacles over the stretch; a mesh is in one group. Obstacles
/// farther than `horizon_in` beyond the reach are left out. Exact for straights; arcs are chords
/// within `Centreline::default_sagitta_in`, which is taken off the gap.
std::map<int, Approach> nearest_structure(const Stretch& stretch, Reach reach,
                                          const Obstacles& obstacles, double horizon_in,
                                          const Group& group, const Counts& counts);

/// Says whether two places, one on each line, are to be compared.
using CountsPair = std::function<bool(double first_distance_in, double second_distance_in)>;

/// True where boxes tell that two lines stay farther apart than `horizon_in` beyond the reach.
bool are_far_apart(const Stretch& first, const Stretch& second, Reach reach, double horizon_in);

/// Least margin between two lines, or nothing where they stay farther apart than `horizon_in`
/// beyond the reach.
std::optional<Approach> nearest_lines(const Stretch& first, const Stretch& second, Reach reach,
                                      double horizon_in, const CountsPair& counts);

}  // namespace linewright
