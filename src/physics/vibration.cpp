#include "physics/vibration.hpp"

#include <cmath>
#include <numbers>

namespace linewright {

double taut_string_frequency_hz(double length_in, double tension_lbf, double weight_lb_per_in) {
  return std::sqrt(tension_lbf * gravity_in_per_s2 / weight_lb_per_in) / (2 * length_in);
}

double first_mode_constant(BeamEnds ends) {
  switch (ends) {
    case BeamEnds::pinned_pinned:
      return std::numbers::pi * std::numbers::pi;
    case BeamEnds::pinned_clamped:
      return 15.418;
    case BeamEnds::clamped_clamped:
      return 22.373;
    case BeamEnds::clamped_free:
      return 3.516;
  }
  return 0;
}

double beam_frequency_hz(BeamEnds ends, double length_in, double weight_lb_per_in,
                         double youngs_modulus_psi, double second_moment_in4) {
  const double stiffness = youngs_modulus_psi * second_moment_in4;
  return first_mode_constant(ends) / (2 * std::numbers::pi * length_in * length_in) *
         std::sqrt(stiffness * gravity_in_per_s2 / weight_lb_per_in);
}

double meeting_rpm(double frequency_hz, double times_per_turn) {
  return 60 * frequency_hz / times_per_turn;
}

double catenary_sag_in(double weight_lb_per_in, double span_in, double tension_lbf) {
  const double a_in = tension_lbf / weight_lb_per_in;
  // cosh(u) − 1 = 2 sinh²(u/2) keeps the digits of a flat line.
  const double half = std::sinh(span_in / (4 * a_in));
  return 2 * a_in * half * half;
}

double catenary_length_in(double weight_lb_per_in, double span_in, double tension_lbf) {
  const double a_in = tension_lbf / weight_lb_per_in;
  return 2 * a_in * std::sinh(span_in / (2 * a_in));
}

}  // namespace linewright
