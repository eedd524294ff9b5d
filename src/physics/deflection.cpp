#include "physics/deflection.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace linewright {
namespace {

/// w L⁴ / (E I), which every evenly loaded beam's sag is a fraction of.
double beam_scale_in(double weight_lb_per_in, double length_in, double youngs_modulus_psi,
                     double second_moment_in4) {
  const double square = length_in * length_in;
  return weight_lb_per_in * square * square / (youngs_modulus_psi * second_moment_in4);
}

}  // namespace

double tube_second_moment_in4(double outside_diameter_in, double inside_diameter_in) {
  const double outside = outside_diameter_in * outside_diameter_in;
  const double inside = inside_diameter_in * inside_diameter_in;
  return std::numbers::pi * (outside - inside) * (outside + inside) / 64;
}

double clamped_beam_sag_in(double weight_lb_per_in, double length_in, double youngs_modulus_psi,
                           double second_moment_in4) {
  return beam_scale_in(weight_lb_per_in, length_in, youngs_modulus_psi, second_moment_in4) / 384;
}

double pinned_beam_sag_in(double weight_lb_per_in, double length_in, double youngs_modulus_psi,
                          double second_moment_in4) {
  return 5 *
         clamped_beam_sag_in(weight_lb_per_in, length_in, youngs_modulus_psi, second_moment_in4);
}

double cantilever_tip_sag_in(double weight_lb_per_in, double length_in, double youngs_modulus_psi,
                             double second_moment_in4) {
  return beam_scale_in(weight_lb_per_in, length_in, youngs_modulus_psi, second_moment_in4) / 8;
}

double string_sag_in(double weight_lb_per_in, double length_in, double tension_lbf) {
  return weight_lb_per_in * length_in * length_in / (8 * tension_lbf);
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

double thermal_growth_in(double length_in, double line_expansion_per_degf,
                         double airframe_expansion_per_degf, double rise_degf) {
  return length_in * (line_expansion_per_degf - airframe_expansion_per_degf) * rise_degf;
}

}  // namespace linewright
