#include "lines/near/nearest_structure.hpp"

#include <algorithm>
#include <cmath>

#include "geometry/minimise.hpp"
#include "lines/near/chord_bounds.hpp"
#include "lines/near/first_place.hpp"

namespace linewright {

namespace {

/// Distance from a point on the chord to a convex obstacle is convex along the chord and the
/// envelope is concave, so the margin is convex and one search finds its least value.
Approach approach_obstacle(const Stretch& stretch, Reach reach, const PathChord& chord,
                           const Obstacle& obstacle, const Nearest& still) {
  const double radius = stretch.route->girth_radius_in((chord.start_in + chord.end_in) / 2);
  const double taken_off = radius + chord_error_in(chord);
  Approach approach;
  double t = 0;
  Nearest there = still;
  if (reach == Reach::none) {
    const double length = distance(chord.from, chord.to);
    t = length > 0 ? distance(chord.from, still.on_first) / length : 0;
  } else {
    const auto margin = [&](double fraction) {
      return nearest(between(chord.from, chord.to, fraction), obstacle).distance_in -
             stretch.envelope.width_in(reach, distance_along(chord, fraction));
    };
    t = minimise_convex(margin, 0, 1, 1e-7).at;
    there = nearest(between(chord.from, chord.to, t), obstacle);
  }
  approach.distance_in = distance_along(chord, t);
  approach.on_line = there.on_first;
  approach.on_other = there.on_second;
  approach.gap_in = there.distance_in - taken_off;
  approach.margin_in = approach.gap_in - stretch.envelope.width_in(reach, approach.distance_in);
  return approach;
}

/// The same margin at the first of the places that have it.
Approach at_first_place(const Stretch& stretch, Reach reach, const PathChord& chord,
                        const Approach& found) {
  const Obstacle& obstacle = *found.obstacle;
  const auto margin = [&](double fraction) {
    const double still = nearest(between(chord.from, chord.to, fraction), obstacle).distance_in;
    return reach == Reach::none
               ? still
               : still - stretch.envelope.width_in(reach, distance_along(chord, fraction));
  };
  const double length = chord.end_in - chord.start_in;
  const double at = length > 0 ? (found.distance_in - chord.start_in) / length : 0;
  const double t = first_place(margin, chord, at);
  if (t == at) return found;
  Approach moved = found;
  const Nearest there = nearest(between(chord.from, chord.to, t), obstacle);
  moved.distance_in = distance_along(chord, t);
  moved.on_line = there.on_first;
  moved.on_other = there.on_second;
  moved.gap_in = moved.margin_in + stretch.envelope.width_in(reach, moved.distance_in);
  return moved;
}

/// A chord and an obstacle that may come near each other.
struct Meeting {
  const PathChord* chord = nullptr;
  const Obstacle* obstacle = nullptr;
  double taken_off_in = 0;     ///< radius and the most that the line can reach there
  double least_margin_in = 0;  ///< lower bound, from boxes
};

/// The place of least margin in each group, as it is looked for.
class BestPlaces {
 public:
  BestPlaces(const Stretch& stretch, Reach reach, double horizon_in, const Counts& counts)
      : stretch_(stretch), reach_(reach), horizon_in_(horizon_in), counts_(counts) {}

  const Stretch& stretch() const { return stretch_; }

  /// Margins from here on need not be looked at.
  double to_beat(int key) const {
    const auto known = best_.find(key);
    return known == best_.end() ? horizon_in_ : known->second.margin_in;
  }

  double taken_off_in(const PathChord& chord) const {
    return taken_off_by(stretch_, reach_, chord);
  }

  void consider(int key, const PathChord& chord, const Obstacle& obstacle, double taken_off_in) {
    if (!counts_(obstacle, (chord.start_in + chord.end_in) / 2)) return;
    const Nearest still = nearest(Segment3{chord.from, chord.to}, obstacle);
    if (still.distance_in - taken_off_in > to_beat(key) + tie_in) return;
    Approach approach = approach_obstacle(stretch_, reach_, chord, obstacle, still);
    approach.obstacle = obstacle;
    const auto known = best_.find(key);
    if (known == best_.end() ? approach.margin_in >= horizon_in_ - tie_in
                             : approach.margin_in > known->second.margin_in + tie_in)
      return;
    approach = at_first_place(stretch_, reach_, chord, approach);
    if (known == best_.end() || is_before(approach, known->second))
      best_[key] = std::move(approach);
  }

  std::map<int, Approach> taken() { return std::move(best_); }

 private:
  /// True for the lesser margin. Of two that are equal it is the edge, for a face ends at its edge
  /// and that is what is met; then the place that lies before the other, whichever way the line and
  /// the structure are listed.
  static bool is_before(const Approach& a, const Approach& b) {
    if (std::abs(a.margin_in - b.margin_in) > tie_in) return a.margin_in < b.margin_in;
    const bool edge = a.obstacle->feature != Feature::face;
    if (edge != (b.obstacle->feature != Feature::face)) return edge;
    return lies_before(a.on_line, b.on_line);
  }

  const Stretch& stretch_;
  Reach reach_;
  double horizon_in_;
  const Counts& counts_;
  std::map<int, Approach> best_;
};

/// The same for a block against a mesh, whose triangles are looked up as they are needed.
void consider_mesh(BestPlaces& best, const ChordBlock& block, const MeshPartField& mesh,
                   const Group& group) {
  const int key = group(obstacle_of(mesh, {}));
  const double swelling = mesh.field->mesh().thickness_in / 2;
  const Stretch& stretch = best.stretch();
  double most = 0;
  for (std::size_t i = block.first; i < block.end; ++i)
    most = std::max(most, best.taken_off_in(stretch.chord(i)));
  // How near a centreline must come for the margin to be of interest.
  const auto bound_in = [&](double taken_off_in) {
    return best.to_beat(key) + tie_in + taken_off_in + swelling;
  };
  if (bound_in(most) < 0) return;
  const auto cells = mesh.field->cells_near(block.bounds, bound_in(most));
  if (cells.empty()) return;
  for (std::size_t i = block.first; i < block.end; ++i) {
    const PathChord& chord = stretch.chord(i);
    const double taken_off = best.taken_off_in(chord);
    if (bound_in(taken_off) < 0) continue;
    mesh.field->visit_within({chord.from, chord.to}, bound_in(taken_off), cells,
                             [&](const MeshItem& item, double) {
                               best.consider(key, chord, obstacle_of(mesh, item), taken_off);
                               return std::max(0.0, bound_in(taken_off));
                             });
  }
}

/// A block's meetings that may beat what is known, gathered obstacle by obstacle.
class Meetings {
 public:
  Meetings(const BestPlaces& best, Reach reach, const ChordBlock& block)
      : best_(best), block_(block) {
    const Stretch& stretch = best.stretch();
    for (std::size_t i = block.first; i < block.end; ++i) {
      boxes_.push_back(bounds_of(stretch.chord(i)));
      taken_off_.push_back(taken_off_by(stretch, reach, stretch.chord(i)));
      most_ = std::max(most_, taken_off_.back());
    }
  }

  /// The most that radius and reach take off anywhere in the block.
  double most_taken_off_in() const { return most_; }

  void add(const Obstacle& obstacle, int key) {
    const Bounds box = bounds_of(obstacle);
    const double to_beat = best_.to_beat(key) + tie_in + obstacle.radius_in;
    if (least_distance(block_.bounds, box) - most_ > to_beat) return;
    for (std::size_t i = 0; i < boxes_.size(); ++i) {
      const double least = least_distance(boxes_[i], box) - taken_off_[i];
      if (least <= to_beat)
        found_.push_back({&best_.stretch().chord(block_.first + i), &obstacle, taken_off_[i],
                          least - obstacle.radius_in});
    }
  }

  /// By lower bound: what is found early spares the rest.
  const std::vector<Meeting>& nearest_first() {
    std::stable_sort(found_.begin(), found_.end(), [](const Meeting& a, const Meeting& b) {
      return a.least_margin_in < b.least_margin_in;
    });
    return found_;
  }

 private:
  const BestPlaces& best_;
  const ChordBlock& block_;
  std::vector<Bounds> boxes_;
  std::vector<double> taken_off_;
  double most_ = 0;
  std::vector<Meeting> found_;
};

/// Blocks in the order of how far they reach: where a line reaches far, what is found there spares
/// most of the rest. Blocks that reach as far stay in order along the line.
std::vector<const ChordBlock*> farthest_reaching_first(const Stretch& stretch, Reach reach) {
  std::vector<std::pair<double, const ChordBlock*>> blocks;
  for (const ChordBlock& block : stretch.blocks)
    blocks.emplace_back(taken_off_by(stretch, reach, stretch.chord(block.first)), &block);
  std::stable_sort(blocks.begin(), blocks.end(),
                   [](const auto& a, const auto& b) { return a.first > b.first; });
  std::vector<const ChordBlock*> ordered;
  for (const auto& [reaches_in, block] : blocks) ordered.push_back(block);
  return ordered;
}

/// What is known of a block's meetings is held against what may beat it, the nearest first.
void consider_meetings(BestPlaces& best, Meetings& meetings, const Group& group) {
  for (const Meeting& meeting : meetings.nearest_first()) {
    const int key = group(*meeting.obstacle);
    if (meeting.least_margin_in <= best.to_beat(key) + tie_in)
      best.consider(key, *meeting.chord, *meeting.obstacle, meeting.taken_off_in);
  }
}

}  // namespace

std::map<int, Approach> nearest_structure(const Stretch& stretch, Reach reach,
                                          const Obstacles& obstacles, double horizon_in,
                                          const Group& group, const Counts& counts) {
  BestPlaces best(stretch, reach, horizon_in, counts);
  for (const ChordBlock* block : farthest_reaching_first(stretch, reach)) {
    Meetings meetings(best, reach, *block);
    obstacles.visit(grown(block->bounds, meetings.most_taken_off_in() + horizon_in),
                    [&](const Obstacle& obstacle) { meetings.add(obstacle, group(obstacle)); });
    consider_meetings(best, meetings, group);
    for (const MeshPartField& mesh : obstacles.meshes()) consider_mesh(best, *block, mesh, group);
  }
  return best.taken();
}

std::optional<Approach> nearest_of_part(const Stretch& stretch, Reach reach,
                                        const Obstacles& obstacles, int part, double horizon_in,
                                        const Counts& counts) {
  const Group alone = [](const Obstacle&) { return 0; };
  BestPlaces best(stretch, reach, horizon_in, counts);
  for (const ChordBlock* block : farthest_reaching_first(stretch, reach)) {
    Meetings meetings(best, reach, *block);
    for (const Obstacle& obstacle : obstacles.of_part(part)) meetings.add(obstacle, 0);
    consider_meetings(best, meetings, alone);
    for (const MeshPartField& mesh : obstacles.meshes())
      if (mesh.part == part) consider_mesh(best, *block, mesh, alone);
  }
  std::map<int, Approach> found = best.taken();
  if (found.empty()) return std::nullopt;
  return std::move(found.begin()->second);
}

bool keeps_off(const Stretch& stretch, Reach reach, const Obstacles& obstacles, int part,
               double gap_in, const Counts& counts) {
  BestPlaces best(stretch, reach, gap_in, counts);
  for (const ChordBlock* block : farthest_reaching_first(stretch, reach)) {
    Meetings meetings(best, reach, *block);
    for (const Obstacle& obstacle : obstacles.of_part(part)) meetings.add(obstacle, 0);
    for (const Meeting& meeting : meetings.nearest_first()) {
      best.consider(0, *meeting.chord, *meeting.obstacle, meeting.taken_off_in);
      if (best.to_beat(0) < gap_in) return false;
    }
    for (const MeshPartField& mesh : obstacles.meshes())
      if (mesh.part == part) consider_mesh(best, *block, mesh, [](const Obstacle&) { return 0; });
    if (best.to_beat(0) < gap_in) return false;
  }
  return true;
}

}  // namespace linewright
