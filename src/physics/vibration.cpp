#include "physics/vibration.hpp"

#include <cmath>
#include <numbers>

namespace linewright {

double taut_string_frequency_hz(const HangingString& string) {
  return std::sqrt(string.tension_lbf * gravity_in_per_s2 / string.weight_lb_per_in) /
         (2 * string.length_in);
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

double beam_frequency_hz(BeamEnds ends, const EvenBeam& beam) {
  const double stiffness = beam.youngs_modulus_psi * beam.second_moment_in4;
  return first_mode_constant(ends) / (2 * std::numbers::pi * beam.length_in * beam.length_in) *
         std::sqrt(stiffness * gravity_in_per_s2 / beam.weight_lb_per_in);
}

double meeting_rpm(double frequency_hz, double times_per_turn) {
  return 60 * frequency_hz / times_per_turn;
}

double catenary_sag_in(const HangingString& string) {
  const double a_in = string.tension_lbf / string.weight_lb_per_in;
  // cosh(u) − 1 = 2 sinh²(u/2) keeps the digits of a flat line.
  const double half = std::sinh(string.length_in / (4 * a_in));
  return 2 * a_in * half * half;
}

double catenary_length_in(const HangingString& string) {
  const double a_in = string.tension_lbf / string.weight_lb_per_in;
  return 2 * a_in * std::sinh(string.length_in / (2 * a_in));
}

}  // namespace linewright
