#include "physics/cable.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "physics/deflection.hpp"

namespace linewright {

double cable_stretch_in(double load_lbf, const CableLength& cable) {
  return load_lbf * cable.length_in / cable.axial_stiffness_lbf;
}

double tension_slope_lbf_per_degf(const Expansions& expansions, double axial_stiffness_lbf) {
  return (expansions.airframe_per_degf - expansions.line_per_degf) * axial_stiffness_lbf;
}

double tied_tension_slope_lbf_per_degf(const TiedCable& cable, std::span<const TiedCable> others,
                                       double airframe_stiffness_lbf_per_in) {
  double stiffness = cable.stiffness_lbf_per_in;
  double pull = cable.stiffness_lbf_per_in * cable.outgrown_in_per_degf;
  for (const TiedCable& other : others) {
    stiffness += other.stiffness_lbf_per_in;
    pull += other.stiffness_lbf_per_in * other.outgrown_in_per_degf;
  }
  const double given_in = pull / (airframe_stiffness_lbf_per_in + stiffness);
  return cable.stiffness_lbf_per_in * (cable.outgrown_in_per_degf - given_in);
}

TensionRange tension_range(double rigged_lbf, double slope_lbf_per_degf,
                           const TemperatureRange& range) {
  const auto tension_at = [&](double degf) {
    return rigged_lbf + slope_lbf_per_degf * (degf - range.rigged_degf);
  };
  TensionRange found{tension_at(range.min_degf), range.min_degf, tension_at(range.max_degf),
                     range.max_degf};
  if (found.lowest_lbf > found.highest_lbf) {
    std::swap(found.lowest_lbf, found.highest_lbf);
    std::swap(found.lowest_at_degf, found.highest_at_degf);
  }
  return found;
}

PulledLoop pulled_loop(const LoopedCable& pulled, const LoopedCable& other, double pull_lbf,
                       double airframe_give_in_per_lbf) {
  const double soft = 1 / pulled.stiffness_lbf_per_in;
  const double other_soft = 1 / other.stiffness_lbf_per_in;
  const double give = 2 * airframe_give_in_per_lbf;
  const double rest_lbf = pulled.tension_lbf + other.tension_lbf;
  const double left_in =
      pulled.stretched_in() + other.stretched_in() + give * rest_lbf - pull_lbf * (soft + give);
  if (left_in < 0) return {pull_lbf, 0, -left_in};
  const double other_lbf = left_in / (soft + other_soft + 2 * give);
  return {pull_lbf + other_lbf, other_lbf, 0};
}

double capstan_ratio(double friction, double wrap_rad) {
  return std::exp(friction * wrap_rad);
}

double guide_push_lbf(double tension_lbf, double turn_rad) {
  return 2 * tension_lbf * std::sin(turn_rad / 2);
}

double untensioned_sag_in(const CableLength& cable) {
  return cable.length_in *
         std::cbrt(3 * cable.weight_lb_per_in * cable.length_in / (64 * cable.axial_stiffness_lbf));
}

double cable_sag_in(const CableLength& cable, double tension_lbf) {
  const double most = untensioned_sag_in(cable);
  if (tension_lbf <= 0) return most;
  return std::min(most, string_sag_in({.length_in = cable.length_in,
                                       .weight_lb_per_in = cable.weight_lb_per_in,
                                       .tension_lbf = tension_lbf}));
}

double off_plane_drift_in(double lead_in, double off_plane_rad) {
  return lead_in * std::tan(off_plane_rad);
}

}  // namespace linewright
