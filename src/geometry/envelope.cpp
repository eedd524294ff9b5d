#include "geometry/envelope.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace linewright {

namespace {

/// Play does not fall to nothing in less than this.
constexpr double shortest_fall_in = 1e-9;

double likely_width(const ReachEnvelope& span, double t) {
  const double parabola = 4 * t * (1 - t);
  const double shape = span.clamped_shape ? std::sin(std::numbers::pi * t) : parabola;
  return span.bow_in * std::max(0.0, shape) + span.sag_in * parabola;
}

/// Straight between the ends of a part `length_in` long of a line drawn with that excess: no less,
/// since a part cannot be more bowed than the whole.
double least_chord_in(double length_in, double excess_in) {
  return std::max(0.0, length_in - excess_in);
}

/// The sum of both ends' plays, each whole near its own end and falling evenly from there to the
/// other: no less than what each does to the line.
double play_at(const ReachEnvelope& span, double distance_in) {
  const double length = span.end_in - span.start_in;
  const auto share = [length](double from_other_in, double full_in) {
    const double falls_over = std::max(length - full_in, shortest_fall_in);
    return std::clamp(from_other_in / falls_over, 0.0, 1.0);
  };
  return span.play_first_in * share(span.end_in - distance_in, span.full_play_first_in) +
         span.play_last_in * share(distance_in - span.start_in, span.full_play_last_in);
}

double half_width_in(double string_in, double chord_in) {
  return std::sqrt(std::max(0.0, string_in * string_in - chord_in * chord_in)) / 2;
}

/// A place of the drawn line is no farther from a support than the line between them is long. So it
/// cannot have passed more of the chord than that, nor lie farther off it.
double bound_width(const ReachEnvelope& span, double t) {
  const double length = span.end_in - span.start_in;
  const double focus = least_chord_in(length, span.drawn_excess_in) / 2;
  const double to_support = length * std::min(t, 1 - t);
  const double ratio = 2 * std::max(0.0, focus - to_support) / (length + span.surplus_in);
  const double ellipse = span.bound_half_width_in * std::sqrt(std::max(0.0, 1 - ratio * ratio));
  const double swing = span.swing_first_in * (1 - t) + span.swing_last_in * t;
  return ellipse + std::min(span.drawn_offset_in, to_support) +
         (span.sag_in + span.bend_spread_in) * 4 * t * (1 - t) + swing;
}

}  // namespace

double ReachEnvelope::width_in(Reach reach, double distance_in) const {
  if (reach == Reach::none) return 0;
  const double t = std::clamp((distance_in - start_in) / (end_in - start_in), 0.0, 1.0);
  return play_at(*this, distance_in) +
         (reach == Reach::likely ? likely_width(*this, t) : bound_width(*this, t));
}

double ReachEnvelope::widest_in(Reach reach) const {
  if (reach == Reach::none) return 0;
  const bool even = full_play_first_in <= 0 && full_play_last_in <= 0;
  const double play = even ? std::max(play_first_in, play_last_in) : play_first_in + play_last_in;
  if (reach == Reach::likely) return play + bow_in + sag_in;
  return play + bound_half_width_in + drawn_offset_in + sag_in + bend_spread_in +
         std::max(swing_first_in, swing_last_in);
}

ReachEnvelope shortened(const ReachEnvelope& span, double start_in, double end_in, double play_in,
                        int sag_power) {
  const double share = (end_in - start_in) / (span.end_in - span.start_in);
  ReachEnvelope part = span;
  part.start_in = start_in;
  part.end_in = end_in;
  if (start_in > span.start_in) {
    part.play_first_in = play_in;
    part.full_play_first_in = 0;
    part.swing_first_in = 0;
  }
  if (end_in < span.end_in) {
    part.play_last_in = play_in;
    part.full_play_last_in = 0;
    part.swing_last_in = 0;
  }
  if (!span.surplus_gathers) part.surplus_in *= share;
  part.bow_in *= share;
  if (span.surplus_gathers) {
    const double length = end_in - start_in;
    part.bound_half_width_in =
        std::min(span.bound_half_width_in,
                 std::max(part.bow_in, half_width_in(length + part.surplus_in, length)));
  } else if (span.drawn_excess_in > 0) {
    const double length = end_in - start_in;
    const double chord = least_chord_in(length, span.drawn_excess_in);
    part.bound_half_width_in =
        std::min(span.bound_half_width_in,
                 std::max(part.bow_in, half_width_in(length + part.surplus_in, chord)));
    part.drawn_offset_in = half_width_in(length, chord);
  } else {
    part.bound_half_width_in *= share;
  }
  part.sag_in *= std::pow(share, sag_power);
  return part;
}

}  // namespace linewright
