#include "lines/near/nearest_lines.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "geometry/minimise.hpp"
#include "geometry/structure/box_index.hpp"
#include "lines/near/chord_bounds.hpp"
#include "lines/near/first_place.hpp"

namespace linewright {

namespace {

/// How exactly the place of least margin between two chords is found, as a share of them: of half
/// an inch to 5e-5 in, and a margin changes by less than twice that over it.
constexpr double place_tolerance = 1e-4;
/// The same of the search inside: what it leaves open must not look like a slope to the one
/// outside.
constexpr double inner_tolerance = 1e-8;

/// Radii of both lines, which hold over the whole of a chord, and what their arcs may add.
double taken_off_lines(const Stretch& first, const PathChord& chord, const Stretch& second,
                       const PathChord& other) {
  return first.route->girth_radius_in(distance_along(chord, 0.5)) +
         second.route->girth_radius_in(distance_along(other, 0.5)) + chord_error_in(chord) +
         chord_error_in(other);
}

/// The least of a jointly convex function of two fractions, one search inside another.
Approach approach_chord(const Stretch& first, const PathChord& chord, const Stretch& second,
                        const PathChord& other, Reach reach) {
  const auto width = [&](double t, double u) {
    return first.envelope.width_in(reach, distance_along(chord, t)) +
           second.envelope.width_in(reach, distance_along(other, u));
  };
  const auto margin = [&](double t, double u) {
    return distance(between(chord.from, chord.to, t), between(other.from, other.to, u)) -
           width(t, u);
  };
  const auto best_u = [&](double t) {
    return minimise_known_convex([&](double u) { return margin(t, u); }, 0, 1, inner_tolerance);
  };
  const double t =
      minimise_known_convex([&](double at) { return best_u(at).value; }, 0, 1, place_tolerance).at;
  const double u = best_u(t).at;
  Approach approach;
  approach.distance_in = distance_along(chord, t);
  approach.other_distance_in = distance_along(other, u);
  approach.on_line = between(chord.from, chord.to, t);
  approach.on_other = between(other.from, other.to, u);
  approach.gap_in =
      distance(approach.on_line, approach.on_other) - taken_off_lines(first, chord, second, other);
  approach.margin_in = approach.gap_in - width(t, u);
  return approach;
}

Approach still_approach(const Stretch& first, const PathChord& chord, const Stretch& second,
                        const PathChord& other, const Nearest& still) {
  const double length = distance(chord.from, chord.to);
  const double other_length = distance(other.from, other.to);
  const double t = length > 0 ? distance(chord.from, still.on_first) / length : 0;
  const double u = other_length > 0 ? distance(other.from, still.on_second) / other_length : 0;
  Approach approach;
  approach.distance_in = distance_along(chord, t);
  approach.other_distance_in = distance_along(other, u);
  approach.on_line = still.on_first;
  approach.on_other = still.on_second;
  approach.gap_in = still.distance_in - taken_off_lines(first, chord, second, other);
  approach.margin_in = approach.gap_in;
  return approach;
}

/// The same margin at the first of the places on the first line that have it.
Approach at_first_place(const Stretch& first, const PathChord& chord, const Stretch& second,
                        const PathChord& other, Reach reach, const Approach& found) {
  const auto facing = [&](double t) {
    const Vec3 here = between(chord.from, chord.to, t);
    const auto margin = [&](double u) {
      return distance(here, between(other.from, other.to, u)) -
             second.envelope.width_in(reach, distance_along(other, u));
    };
    if (reach != Reach::none) return minimise_known_convex(margin, 0, 1, inner_tolerance);
    const Nearest still = nearest(Segment3{here, here}, Segment3{other.from, other.to});
    const double length = distance(other.from, other.to);
    return Minimum{length > 0 ? distance(other.from, still.on_second) / length : 0,
                   still.distance_in};
  };
  const auto margin = [&](double t) {
    return facing(t).value - first.envelope.width_in(reach, distance_along(chord, t));
  };
  const double length = chord.end_in - chord.start_in;
  const double at = length > 0 ? (found.distance_in - chord.start_in) / length : 0;
  const double t = first_place(margin, chord, at);
  if (t == at) return found;
  const double u = facing(t).at;
  Approach moved = found;
  moved.distance_in = distance_along(chord, t);
  moved.other_distance_in = distance_along(other, u);
  moved.on_line = between(chord.from, chord.to, t);
  moved.on_other = between(other.from, other.to, u);
  moved.gap_in = moved.margin_in + first.envelope.width_in(reach, moved.distance_in) +
                 second.envelope.width_in(reach, moved.other_distance_in);
  return moved;
}

/// Two pieces, one of each line, and a margin that they cannot be under.
struct Facing {
  std::size_t first = 0;
  std::size_t second = 0;
  double least_margin_in = 0;
};

/// Nearest first; what is equally near stays in order along the lines.
void sort_by_margin(std::vector<Facing>& facing) {
  const auto rounded = [](const Facing& each) { return std::floor(each.least_margin_in / tie_in); };
  std::stable_sort(facing.begin(), facing.end(),
                   [&](const Facing& a, const Facing& b) { return rounded(a) < rounded(b); });
}

/// The most that radii and reach of both take off a distance anywhere.
double most_taken_off(const Stretch& first, const Stretch& second, Reach reach) {
  return first.thickest_radius_in + second.thickest_radius_in + 2 * Centreline::default_sagitta_in +
         first.envelope.widest_in(reach) + second.envelope.widest_in(reach);
}

/// Of each chord of the block: what its radius and its reach can take off a distance.
std::vector<double> taken_off_by_block(const Stretch& stretch, Reach reach,
                                       const ChordBlock& block) {
  std::vector<double> taken_off;
  for (std::size_t i = block.first; i < block.end; ++i)
    taken_off.push_back(taken_off_by(stretch, reach, stretch.chord(i)));
  return taken_off;
}

/// Of each block: the most that one of its chords takes off.
std::vector<double> most_of_blocks(const Stretch& stretch, Reach reach) {
  std::vector<double> most;
  for (const ChordBlock& block : stretch.blocks) {
    const std::vector<double> taken_off = taken_off_by_block(stretch, reach, block);
    most.push_back(*std::max_element(taken_off.begin(), taken_off.end()));
  }
  return most;
}

/// The search for the least margin between two lines.
class LinePair {
 public:
  LinePair(const Stretch& first, const Stretch& second, Reach reach, double horizon_in,
           const CountsPair& counts)
      : first_(first), second_(second), reach_(reach), horizon_in_(horizon_in), counts_(counts) {}

  std::optional<Approach> nearest_place() {
    if (are_far_apart(first_, second_, reach_, horizon_in_)) return std::nullopt;
    const std::vector<double> most = most_of_blocks(first_, reach_);
    const std::vector<double> other_most = most_of_blocks(second_, reach_);
    std::vector<Facing> blocks = facing_blocks(most, other_most);
    sort_by_margin(blocks);
    for (const Facing& each : blocks)
      if (each.least_margin_in < to_beat())
        consider_blocks(first_.blocks[each.first], second_.blocks[each.second]);
    return std::move(best_);
  }

 private:
  /// Margins from here on need not be looked at; those that are equal to the best are.
  double to_beat() const { return best_ ? best_->margin_in + tie_in : horizon_in_; }

  /// Pairs of blocks that can come within the horizon. Between two long lines they are looked up.
  std::vector<Facing> facing_blocks(const std::vector<double>& most,
                                    const std::vector<double>& other_most) const {
    constexpr std::size_t few = 32;
    std::vector<Facing> facing;
    const auto face = [&](std::size_t i, std::size_t j) {
      const double least = least_distance(first_.blocks[i].bounds, second_.blocks[j].bounds) -
                           most[i] - other_most[j];
      if (least < horizon_in_) facing.push_back({i, j, least});
    };
    if (first_.blocks.size() <= few || second_.blocks.size() <= few) {
      for (std::size_t i = 0; i < first_.blocks.size(); ++i)
        for (std::size_t j = 0; j < second_.blocks.size(); ++j) face(i, j);
      return facing;
    }
    std::vector<Bounds> reached;
    for (std::size_t j = 0; j < second_.blocks.size(); ++j)
      reached.push_back(grown(second_.blocks[j].bounds, other_most[j]));
    const BoxIndex index(reached);
    for (std::size_t i = 0; i < first_.blocks.size(); ++i)
      for (const std::size_t j : index.near(first_.blocks[i].bounds, most[i] + horizon_in_))
        face(i, j);
    return facing;
  }

  void consider_blocks(const ChordBlock& block, const ChordBlock& facing) {
    const std::vector<double> taken_off = taken_off_by_block(first_, reach_, block);
    const std::vector<double> other_taken_off = taken_off_by_block(second_, reach_, facing);
    std::vector<Facing> chords;
    for (std::size_t i = block.first; i < block.end; ++i)
      for (std::size_t j = facing.first; j < facing.end; ++j) {
        const double off = taken_off[i - block.first] + other_taken_off[j - facing.first];
        const PathChord& chord = first_.chord(i);
        const PathChord& other = second_.chord(j);
        if (least_distance(bounds_of(chord), bounds_of(other)) - off >= to_beat()) continue;
        const double least = still(chord, other).distance_in - off;
        if (least < to_beat()) chords.push_back({i, j, least});
      }
    sort_by_margin(chords);
    for (const Facing& each : chords)
      if (each.least_margin_in < to_beat())
        consider(first_.chord(each.first), second_.chord(each.second));
  }

  static Nearest still(const PathChord& chord, const PathChord& other) {
    return nearest(Segment3{chord.from, chord.to}, Segment3{other.from, other.to});
  }

  void consider(const PathChord& chord, const PathChord& other) {
    if (!counts_(distance_along(chord, 0.5), distance_along(other, 0.5))) return;
    Approach approach = reach_ == Reach::none
                            ? still_approach(first_, chord, second_, other, still(chord, other))
                            : approach_chord(first_, chord, second_, other, reach_);
    if (approach.margin_in >= to_beat()) return;
    approach = at_first_place(first_, chord, second_, other, reach_, approach);
    if (!best_ || approach.margin_in < best_->margin_in - tie_in ||
        lies_before(approach.on_line, best_->on_line))
      best_ = approach;
  }

  const Stretch& first_;
  const Stretch& second_;
  Reach reach_;
  double horizon_in_;
  const CountsPair& counts_;
  std::optional<Approach> best_;
};

}  // namespace

bool are_far_apart(const Stretch& first, const Stretch& second, Reach reach, double horizon_in) {
  return least_distance(first.bounds, second.bounds) - most_taken_off(first, second, reach) >=
         horizon_in;
}

std::optional<Approach> nearest_lines(const Stretch& first, const Stretch& second, Reach reach,
                                      double horizon_in, const CountsPair& counts) {
  return LinePair(first, second, reach, horizon_in, counts).nearest_place();
}

}  // namespace linewright
