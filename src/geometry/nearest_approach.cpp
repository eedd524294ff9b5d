#include "geometry/nearest_approach.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/minimise.hpp"

namespace linewright {

namespace {

/// Margins nearer to each other than this are equal.
constexpr double tie_in = 1e-7;

Bounds grown_bounds(const PathChord& chord, double by) {
  const auto [low_x, high_x] = std::minmax(chord.from.x, chord.to.x);
  const auto [low_y, high_y] = std::minmax(chord.from.y, chord.to.y);
  const auto [low_z, high_z] = std::minmax(chord.from.z, chord.to.z);
  return {{low_x - by, low_y - by, low_z - by}, {high_x + by, high_y + by, high_z + by}};
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
  const double radius = stretch.route->radius_in((chord.start_in + chord.end_in) / 2);
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
  approach.gap_in = distance(approach.on_line, approach.on_other) -
                    first.route->radius_in(approach.distance_in) -
                    second.route->radius_in(approach.other_distance_in) - chord_error_in(chord) -
                    chord_error_in(other);
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
  approach.gap_in = still.distance_in - first.route->radius_in(approach.distance_in) -
                    second.route->radius_in(approach.other_distance_in) - chord_error_in(chord) -
                    chord_error_in(other);
  approach.margin_in = approach.gap_in;
  return approach;
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

std::vector<PathChord> stretch_chords(const Stretch& stretch) {
  std::vector<double> breaks{stretch.start_in, stretch.end_in};
  for (const Sleeve& sleeve : stretch.route->route->sleeves)
    for (const double at : {sleeve.from_in, sleeve.to_in})
      if (at > stretch.start_in && at < stretch.end_in) breaks.push_back(at);
  std::sort(breaks.begin(), breaks.end());
  std::vector<PathChord> cut;
  for (std::size_t i = 0; i + 1 < breaks.size(); ++i)
    for (const PathChord& chord : stretch.route->centreline.chords(breaks[i], breaks[i + 1]))
      cut_to_length(chord, cut);
  return cut;
}

std::map<int, Approach> nearest_structure(const Stretch& stretch, Reach reach,
                                          const Obstacles& obstacles, double horizon_in,
                                          const Group& group, const Counts& counts) {
  std::map<int, Approach> best;
  const double widest = stretch.envelope.widest_in(reach);
  for (const PathChord& chord : stretch_chords(stretch)) {
    const double middle = (chord.start_in + chord.end_in) / 2;
    const double radius = stretch.route->radius_in(middle);
    const double look = widest + radius + horizon_in + Centreline::default_sagitta_in;
    obstacles.visit(grown_bounds(chord, look), [&](const Obstacle& obstacle) {
      if (!counts(obstacle, middle)) return;
      const Nearest still = nearest(Segment3{chord.from, chord.to}, obstacle);
      const auto known = best.find(group(obstacle));
      const double to_beat = known == best.end() ? horizon_in : known->second.margin_in;
      if (still.distance_in - radius - Centreline::default_sagitta_in - widest > to_beat + tie_in)
        return;
      const Approach approach = approach_obstacle(stretch, reach, chord, obstacle, still);
      // A face ends at its edge: where both are equally near, the edge is what is met.
      const bool edge = obstacle.feature != Feature::face;
      if (approach.margin_in < to_beat - tie_in || (edge && approach.margin_in < to_beat + tie_in))
        best[group(obstacle)] = approach;
    });
  }
  return best;
}

std::optional<Approach> nearest_lines(const Stretch& first, const Stretch& second, Reach reach,
                                      double horizon_in, const CountsPair& counts) {
  std::optional<Approach> best;
  const std::vector<PathChord> others = stretch_chords(second);
  const double widest = first.envelope.widest_in(reach) + second.envelope.widest_in(reach);
  for (const PathChord& chord : stretch_chords(first)) {
    const double middle = (chord.start_in + chord.end_in) / 2;
    for (const PathChord& other : others) {
      const double other_middle = (other.start_in + other.end_in) / 2;
      const double taken_off = first.route->radius_in(middle) +
                               second.route->radius_in(other_middle) +
                               2 * Centreline::default_sagitta_in + widest;
      const double to_beat = best ? best->margin_in : horizon_in;
      const double centres =
          distance(between(chord.from, chord.to, 0.5), between(other.from, other.to, 0.5));
      const double halves = (distance(chord.from, chord.to) + distance(other.from, other.to)) / 2;
      if (centres - halves - taken_off >= to_beat) continue;
      if (!counts(middle, other_middle)) continue;
      const Nearest still = nearest(Segment3{chord.from, chord.to}, Segment3{other.from, other.to});
      if (still.distance_in - taken_off >= to_beat) continue;
      const Approach approach = reach == Reach::none
                                    ? still_approach(first, chord, second, other, still)
                                    : approach_chord(first, chord, second, other, reach);
      if (approach.margin_in < to_beat) best = approach;
    }
  }
  return best;
}

}  // namespace linewright
