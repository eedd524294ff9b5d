#include "physics/deflection.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace linewright {
namespace {

/// w L⁴ / (E I), which every evenly loaded beam's sag is a fraction of.
double beam_scale_in(const EvenBeam& beam) {
  const double square = beam.length_in * beam.length_in;
  return beam.weight_lb_per_in * square * square /
         (beam.youngs_modulus_psi * beam.second_moment_in4);
}

}  // namespace

double tube_second_moment_in4(double outside_diameter_in, double inside_diameter_in) {
  const double outside = outside_diameter_in * outside_diameter_in;
  const double inside = inside_diameter_in * inside_diameter_in;
  return std::numbers::pi * (outside - inside) * (outside + inside) / 64;
}

double clamped_beam_sag_in(const EvenBeam& beam) {
  return beam_scale_in(beam) / 384;
}

double pinned_beam_sag_in(const EvenBeam& beam) {
  return 5 * clamped_beam_sag_in(beam);
}

double cantilever_tip_sag_in(const EvenBeam& beam) {
  return beam_scale_in(beam) / 8;
}

double string_sag_in(const HangingString& string) {
  return string.weight_lb_per_in * string.length_in * string.length_in / (8 * string.tension_lbf);
}

double slack_string_bow_in(double length_in, double surplus_in) {
  return std::sqrt(3 * length_in * std::max(surplus_in, 0.0) / 8);
}

double clamped_tube_bow_in(double length_in, double surplus_in) {
  return 2 / std::numbers::pi * std::sqrt(length_in * std::max(surplus_in, 0.0));
}

double ellipsoid_half_width_in(double foci_distance_in, double string_length_in) {
  const double surplus_in = std::max(string_length_in - foci_distance_in, 0.0);
  return std::sqrt(surplus_in * (string_length_in + foci_distance_in)) / 2;
}

double thermal_growth_in(double length_in, const Expansions& expansions, double rise_degf) {
  return length_in * (expansions.line_per_degf - expansions.airframe_per_degf) * rise_degf;
}

}  // namespace linewright
