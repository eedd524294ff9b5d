#pragma once
// Air creeping through small tubes and leaks: resistance, lag and the size of a hole. Lengths and
// bores are inches, volumes cubic inches, pressures absolute pascals, flows cubic inches per
// second.
//
// Functions answer nothing for arguments outside their range (negative sizes, zero where it is not
// said to be allowed, what is not finite). None of them throws.

#include <optional>

namespace linewright {

/// Reynolds number below which flow in a tube is laminar; above it the resistances here are too low
/// [from memory: flow text-book figure].
inline constexpr double laminar_reynolds_limit = 2'000;

/// Viscosity of air by Sutherland's formula, mu = 1.458e-6 T^1.5 / (T + 110.4) Pa s [from memory:
/// US Standard Atmosphere 1976; it reproduces five published rows of that standard to their last
/// digit]. From 170 K to 1,900 K, within about 2 % [from memory: viscous-flow text-books].
std::optional<double> air_viscosity_pa_s(double temperature_k);

/// Resistance of a round tube to laminar flow (Hagen and Poiseuille): pressure drop over volume
/// flow,
///   128 mu L / (pi d^4), Pa per in3/s; its inverse is the conductance.
/// Holds below `laminar_reynolds_limit`, for a drop small against the absolute pressure, in tubes
/// much longer than their bore. Resistances in series add; a length of zero is allowed. [from
/// memory: NASA RP-1046, NACA Report 919]
std::optional<double> laminar_resistance_pa_s_per_in3(double length_in, double bore_in,
                                                      double viscosity_pa_s);

/// Reynolds number of a volume flow in a round bore, Re = 4 rho q / (pi mu d). A flow of either
/// sign.
std::optional<double> tube_reynolds_number(double flow_in3_per_s, double bore_in,
                                           double density_kg_per_m3, double viscosity_pa_s);

/// Volume inside a round tube, pi d^2 L / 4. Zero length is allowed.
std::optional<double> tube_volume_in3(double length_in, double bore_in);

/// Flow that a volume draws or gives while its pressure changes at a rate, at that pressure and
/// constant temperature: q = C (dp/dt) / p. Keeps the sign of the rate; zero volume is allowed.
std::optional<double> breathing_flow_in3_per_s(double volume_in3, double pressure_rate_pa_per_s,
                                               double pressure_pa);

/// Lag constant of a resistance with a volume behind it, lambda = R C / p, seconds: the pressure
/// inside trails the pressure outside by lambda dp/dt. Constant temperature is assumed; changes too
/// fast for it lag 1.4 times less. Zero resistance or volume is allowed. [from memory: NASA RP-1046
/// lag chapter, NACA TN 2793]
std::optional<double> lag_constant_s(double resistance_pa_s_per_in3, double volume_in3,
                                     double pressure_pa);

/// A uniform tube with a closed volume (an instrument) at its end.
struct TubeWithVolume {
  double length_in = 0;
  double bore_in = 0;
  double end_volume_in3 = 0;  ///< zero is allowed
};

/// Lag constant of the far end, with half the tube's own volume added to the end volume: the air of
/// the tube itself passes on average half the tube's resistance. [from memory: derivation]
std::optional<double> lag_constant_s(const TubeWithVolume& line, double viscosity_pa_s,
                                     double pressure_pa);

/// How far an altimeter behind the lag trails in a steady climb or descent: lambda x rate, feet, of
/// the rate's sign. [from memory: NASA RP-1046]
constexpr double altitude_lag_ft(double lag_s, double climb_ft_per_min) {
  return lag_s * climb_ft_per_min / 60;
}

/// Discharge coefficient of a sharp-edged orifice [verified: hydraulics pages, 0.61 to 0.62]. It is
/// measured on holes far larger than a leak: at a pinhole's Reynolds number of some hundreds it is
/// uncertain by 10 to 20 % [from memory].
inline constexpr double sharp_orifice_discharge_coefficient = 0.61;

/// Flow through a sharp-edged hole, q = Cd (pi d^2 / 4) sqrt(2 dp / rho). Incompressible: for a
/// pressure difference below about 5 % of the absolute pressure. Zero difference is allowed.
std::optional<double> orifice_flow_in3_per_s(double diameter_in, double pressure_difference_pa,
                                             double density_kg_per_m3);

/// Diameter of the single sharp-edged hole that would pass a leak's flow, the inverse of the above;
/// a picture for the builder, since a real leak is a crack or many. Zero flow is allowed.
std::optional<double> equivalent_orifice_in(double flow_in3_per_s, double pressure_difference_pa,
                                            double density_kg_per_m3);

}  // namespace linewright
