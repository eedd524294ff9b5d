#include "geometry/nearest_approach.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/minimise.hpp"

namespace linewright {

namespace {

/// Margins nearer to each other than this are equal.
constexpr double tie_in = 1e-7;

void include(Bounds& bounds, Vec3 point) {
  bounds.min = {std::min(bounds.min.x, point.x), std::min(bounds.min.y, point.y),
                std::min(bounds.min.z, point.z)};
  bounds.max = {std::max(bounds.max.x, point.x), std::max(bounds.max.y, point.y),
                std::max(bounds.max.z, point.z)};
}

Bounds bounds_of(const PathChord& chord) {
  Bounds bounds{chord.from, chord.from};
  include(bounds, chord.to);
  return bounds;
}

Bounds bounds_of(const Triangle3& shape) {
  Bounds bounds{shape.a, shape.a};
  include(bounds, shape.b);
  include(bounds, shape.c);
  return bounds;
}

Bounds grown(const Bounds& bounds, double by) {
  const Vec3 all{by, by, by};
  return {bounds.min - all, bounds.max + all};
}

/// No two points of the boxes are nearer than this.
double least_distance(const Bounds& a, const Bounds& b) {
  const double x = std::max({0.0, a.min.x - b.max.x, b.min.x - a.max.x});
  const double y = std::max({0.0, a.min.y - b.max.y, b.min.y - a.max.y});
  const double z = std::max({0.0, a.min.z - b.max.z, b.min.z - a.max.z});
  return std::sqrt(x * x + y * y + z * z);
}

double distance_along(const PathChord& chord, double t) {
  return chord.start_in + (chord.end_in - chord.start_in) * t;
}

/// Straight chords are exact; an arc may lie up to the sagitta outside of its chord.
double chord_error_in(const PathChord& chord) {
  const double straight = distance(chord.from, chord.to);
  return chord.end_in - chord.start_in - straight > 1e-12 ? Centreline::default_sagitta_in : 0.0;
}

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
    return minimise_convex([&](double u) { return margin(t, u); }, 0, 1, 1e-5);
  };
  const double t = minimise_convex([&](double at) { return best_u(at).value; }, 0, 1, 1e-5).at;
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

/// Upper bound on the envelope over a chord. A concave function lies below the line through any two
/// of its points, outside of them: three values bound it.
double widest_over(const Stretch& stretch, Reach reach, const PathChord& chord) {
  if (reach == Reach::none) return 0;
  const double start = stretch.envelope.width_in(reach, chord.start_in);
  const double middle = stretch.envelope.width_in(reach, distance_along(chord, 0.5));
  const double end = stretch.envelope.width_in(reach, chord.end_in);
  return std::max({middle, 2 * middle - start, 2 * middle - end});
}

/// The most that radius, sagitta and reach take off a distance anywhere on the chord.
double taken_off_by(const Stretch& stretch, Reach reach, const PathChord& chord) {
  return stretch.route->girth_radius_in(distance_along(chord, 0.5)) +
         Centreline::default_sagitta_in + widest_over(stretch, reach, chord);
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
    // A face ends at its edge: where both are equally near, the edge is what is met.
    const bool edge = obstacle.feature != Feature::face;
    if (approach.margin_in >= to_beat(key) - tie_in &&
        !(edge && approach.margin_in < to_beat(key) + tie_in))
      return;
    approach.obstacle = obstacle;
    best_[key] = std::move(approach);
  }

  std::map<int, Approach> taken() { return std::move(best_); }

 private:
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
  const double swelling = mesh.field->mesh().thickness / 2;
  const auto& chords = best.stretch().chords;
  double most = 0;
  for (std::size_t i = block.first; i < block.end; ++i)
    most = std::max(most, best.taken_off_in(chords[i]));
  // How near a centreline must come for the margin to be of interest.
  const auto bound_in = [&](double taken_off_in) {
    return best.to_beat(key) + tie_in + taken_off_in + swelling;
  };
  if (bound_in(most) < 0) return;
  const auto cells = mesh.field->cells_near({block.bounds.min, block.bounds.max}, bound_in(most));
  if (cells.empty()) return;
  for (std::size_t i = block.first; i < block.end; ++i) {
    const PathChord& chord = chords[i];
    const double taken_off = best.taken_off_in(chord);
    if (bound_in(taken_off) < 0) continue;
    mesh.field->visit_within({chord.from, chord.to}, bound_in(taken_off), cells,
                             [&](const MeshItem& item, double) {
                               best.consider(key, chord, obstacle_of(mesh, item), taken_off);
                               return std::max(0.0, bound_in(taken_off));
                             });
  }
}

/// All of a block's meetings with a margin that may be under the horizon, by lower bound.
std::vector<Meeting> meetings(const Stretch& stretch, Reach reach, const Obstacles& obstacles,
                              double horizon_in, const ChordBlock& block) {
  std::vector<Bounds> boxes;
  std::vector<double> taken_off;
  double most = 0;
  for (std::size_t i = block.first; i < block.end; ++i) {
    const PathChord& chord = stretch.chords[i];
    boxes.push_back(bounds_of(chord));
    taken_off.push_back(taken_off_by(stretch, reach, chord));
    most = std::max(most, taken_off.back());
  }
  std::vector<Meeting> found;
  obstacles.visit(grown(block.bounds, most + horizon_in), [&](const Obstacle& obstacle) {
    const Bounds box = bounds_of(obstacle.shape);
    for (std::size_t i = 0; i < boxes.size(); ++i) {
      const double least = least_distance(boxes[i], box) - obstacle.radius_in - taken_off[i];
      if (least <= horizon_in + tie_in)
        found.push_back({&stretch.chords[block.first + i], &obstacle, taken_off[i], least});
    }
  });
  std::stable_sort(found.begin(), found.end(), [](const Meeting& a, const Meeting& b) {
    return a.least_margin_in < b.least_margin_in;
  });
  return found;
}

void cut_to_length(const PathChord& chord, std::vector<PathChord>& cut) {
  const double length = chord.end_in - chord.start_in;
  const int parts = std::max(1, static_cast<int>(std::ceil(length / longest_chord_in)));
  for (int i = 0; i < parts; ++i) {
    const double t0 = static_cast<double>(i) / parts;
    const double t1 = static_cast<double>(i + 1) / parts;
    cut.push_back({between(chord.from, chord.to, t0), between(chord.from, chord.to, t1),
                   distance_along(chord, t0), distance_along(chord, t1)});
  }
}

}  // namespace

Stretch make_stretch(const PreparedRoute& route, double start_in, double end_in,
                     const ReachEnvelope& envelope) {
  Stretch stretch{&route, start_in, end_in, envelope, {}, {}, {}, route.thickest_radius_in()};
  std::vector<double> breaks{start_in, end_in};
  for (const Sleeve& sleeve : route.route->sleeves)
    for (const double at : {sleeve.from_in, sleeve.to_in})
      if (at > start_in && at < end_in) breaks.push_back(at);
  for (const SweptPart& part : route.swept_by_attachments)
    for (const double at : {part.from_in, part.to_in})
      if (at > start_in && at < end_in) breaks.push_back(at);
  std::sort(breaks.begin(), breaks.end());
  breaks.erase(std::unique(breaks.begin(), breaks.end()), breaks.end());
  for (std::size_t i = 0; i + 1 < breaks.size(); ++i)
    for (const PathChord& chord : route.centreline.chords(breaks[i], breaks[i + 1]))
      cut_to_length(chord, stretch.chords);
  constexpr std::size_t block_size = 12;
  for (std::size_t i = 0; i < stretch.chords.size(); i += block_size) {
    ChordBlock block{i, std::min(i + block_size, stretch.chords.size()),
                     bounds_of(stretch.chords[i])};
    for (std::size_t j = i; j < block.end; ++j) include(block.bounds, stretch.chords[j].to);
    if (stretch.blocks.empty()) stretch.bounds = block.bounds;
    include(stretch.bounds, block.bounds.min);
    include(stretch.bounds, block.bounds.max);
    stretch.blocks.push_back(block);
  }
  return stretch;
}

std::map<int, Approach> nearest_structure(const Stretch& stretch, Reach reach,
                                          const Obstacles& obstacles, double horizon_in,
                                          const Group& group, const Counts& counts) {
  BestPlaces best(stretch, reach, horizon_in, counts);
  for (const ChordBlock& block : stretch.blocks) {
    // Nearest first: what is found early spares the rest.
    for (const Meeting& meeting : meetings(stretch, reach, obstacles, horizon_in, block)) {
      const int key = group(*meeting.obstacle);
      if (meeting.least_margin_in <= best.to_beat(key) + tie_in)
        best.consider(key, *meeting.chord, *meeting.obstacle, meeting.taken_off_in);
    }
    for (const MeshPartField& mesh : obstacles.meshes()) consider_mesh(best, block, mesh, group);
  }
  return best.taken();
}

namespace {

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
    taken_off.push_back(taken_off_by(stretch, reach, stretch.chords[i]));
  return taken_off;
}

/// The search for the least margin between two lines.
class LinePair {
 public:
  LinePair(const Stretch& first, const Stretch& second, Reach reach, double horizon_in,
           const CountsPair& counts)
      : first_(first), second_(second), reach_(reach), horizon_in_(horizon_in), counts_(counts) {}

  std::optional<Approach> nearest_place() {
    if (are_far_apart(first_, second_, reach_, horizon_in_)) return std::nullopt;
    const double thickest = most_taken_off(first_, second_, reach_);
    std::vector<Facing> blocks;
    for (std::size_t i = 0; i < first_.blocks.size(); ++i)
      for (std::size_t j = 0; j < second_.blocks.size(); ++j) {
        const double least =
            least_distance(first_.blocks[i].bounds, second_.blocks[j].bounds) - thickest;
        if (least < horizon_in_) blocks.push_back({i, j, least});
      }
    sort_by_margin(blocks);
    for (const Facing& each : blocks)
      if (each.least_margin_in < to_beat())
        consider_blocks(first_.blocks[each.first], second_.blocks[each.second]);
    return std::move(best_);
  }

 private:
  double to_beat() const { return best_ ? best_->margin_in : horizon_in_; }

  void consider_blocks(const ChordBlock& block, const ChordBlock& facing) {
    const std::vector<double> taken_off = taken_off_by_block(first_, reach_, block);
    const std::vector<double> other_taken_off = taken_off_by_block(second_, reach_, facing);
    std::vector<Facing> chords;
    for (std::size_t i = block.first; i < block.end; ++i)
      for (std::size_t j = facing.first; j < facing.end; ++j) {
        const double off = taken_off[i - block.first] + other_taken_off[j - facing.first];
        const PathChord& chord = first_.chords[i];
        const PathChord& other = second_.chords[j];
        if (least_distance(bounds_of(chord), bounds_of(other)) - off >= to_beat()) continue;
        const double least = still(chord, other).distance_in - off;
        if (least < to_beat()) chords.push_back({i, j, least});
      }
    sort_by_margin(chords);
    for (const Facing& each : chords)
      if (each.least_margin_in < to_beat())
        consider(first_.chords[each.first], second_.chords[each.second]);
  }

  static Nearest still(const PathChord& chord, const PathChord& other) {
    return nearest(Segment3{chord.from, chord.to}, Segment3{other.from, other.to});
  }

  void consider(const PathChord& chord, const PathChord& other) {
    if (!counts_(distance_along(chord, 0.5), distance_along(other, 0.5))) return;
    const Approach approach =
        reach_ == Reach::none ? still_approach(first_, chord, second_, other, still(chord, other))
                              : approach_chord(first_, chord, second_, other, reach_);
    if (approach.margin_in < to_beat()) best_ = approach;
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
