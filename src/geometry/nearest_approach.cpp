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
  approach.obstacle = &obstacle;
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

/// A chord and an obstacle that may come near each other.
struct Meeting {
  const PathChord* chord = nullptr;
  const Obstacle* obstacle = nullptr;
  double taken_off_in = 0;     ///< radius and the most that the line can reach there
  double least_margin_in = 0;  ///< lower bound, from boxes
};

/// All of a block's meetings with a margin that may be under the horizon, by lower bound.
std::vector<Meeting> meetings(const Stretch& stretch, Reach reach, const Obstacles& obstacles,
                              double horizon_in, const ChordBlock& block) {
  std::vector<Bounds> boxes;
  std::vector<double> taken_off;
  double most = 0;
  for (std::size_t i = block.first; i < block.end; ++i) {
    const PathChord& chord = stretch.chords[i];
    boxes.push_back(bounds_of(chord));
    taken_off.push_back(stretch.route->girth_radius_in(distance_along(chord, 0.5)) +
                        Centreline::default_sagitta_in + widest_over(stretch, reach, chord));
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
  Stretch stretch{&route, start_in, end_in, envelope, {}, {}};
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
    stretch.blocks.push_back(block);
  }
  return stretch;
}

std::map<int, Approach> nearest_structure(const Stretch& stretch, Reach reach,
                                          const Obstacles& obstacles, double horizon_in,
                                          const Group& group, const Counts& counts) {
  std::map<int, Approach> best;
  const auto to_beat = [&](int key) {
    const auto known = best.find(key);
    return known == best.end() ? horizon_in : known->second.margin_in;
  };
  for (const ChordBlock& block : stretch.blocks) {
    // Nearest first: what is found early spares the rest.
    for (const Meeting& meeting : meetings(stretch, reach, obstacles, horizon_in, block)) {
      const PathChord& chord = *meeting.chord;
      const Obstacle& obstacle = *meeting.obstacle;
      const int key = group(obstacle);
      if (meeting.least_margin_in > to_beat(key) + tie_in) continue;
      if (!counts(obstacle, (chord.start_in + chord.end_in) / 2)) continue;
      const Nearest still = nearest(Segment3{chord.from, chord.to}, obstacle);
      if (still.distance_in - meeting.taken_off_in > to_beat(key) + tie_in) continue;
      const Approach approach = approach_obstacle(stretch, reach, chord, obstacle, still);
      // A face ends at its edge: where both are equally near, the edge is what is met.
      const bool edge = obstacle.feature != Feature::face;
      if (approach.margin_in < to_beat(key) - tie_in ||
          (edge && approach.margin_in < to_beat(key) + tie_in))
        best[key] = approach;
    }
  }
  return best;
}

std::optional<Approach> nearest_lines(const Stretch& first, const Stretch& second, Reach reach,
                                      double horizon_in, const CountsPair& counts) {
  std::optional<Approach> best;
  const double widest = first.envelope.widest_in(reach) + second.envelope.widest_in(reach);
  const auto consider = [&](const PathChord& chord, const PathChord& other) {
    const double to_beat = best ? best->margin_in : horizon_in;
    const double middle = (chord.start_in + chord.end_in) / 2;
    const double other_middle = (other.start_in + other.end_in) / 2;
    const double taken_off = first.route->girth_radius_in(middle) +
                             second.route->girth_radius_in(other_middle) +
                             2 * Centreline::default_sagitta_in + widest;
    if (least_distance(bounds_of(chord), bounds_of(other)) - taken_off >= to_beat) return;
    if (!counts(middle, other_middle)) return;
    const Nearest still = nearest(Segment3{chord.from, chord.to}, Segment3{other.from, other.to});
    if (still.distance_in - taken_off >= to_beat) return;
    const Approach approach = reach == Reach::none
                                  ? still_approach(first, chord, second, other, still)
                                  : approach_chord(first, chord, second, other, reach);
    if (approach.margin_in < to_beat) best = approach;
  };
  const double thickest = first.route->thickest_radius_in() + second.route->thickest_radius_in() +
                          2 * Centreline::default_sagitta_in + widest;
  for (const ChordBlock& block : first.blocks)
    for (const ChordBlock& facing : second.blocks) {
      if (least_distance(block.bounds, facing.bounds) - thickest >=
          (best ? best->margin_in : horizon_in))
        continue;
      for (std::size_t i = block.first; i < block.end; ++i)
        for (std::size_t j = facing.first; j < facing.end; ++j)
          consider(first.chords[i], second.chords[j]);
    }
  return best;
}

}  // namespace linewright
