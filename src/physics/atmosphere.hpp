#pragma once
// The standard atmosphere, and what an altimeter makes of a pressure. Heights are geopotential
// feet, as in altimetry; pressures are absolute, in pascals.
//
// Model: US Standard Atmosphere 1976, its lowest layer only (temperature falls linearly),
//   p = P0 (1 - H L / T0)^n,  n = g0 / (R L).
// Published summaries of the standard give P0, T0, L, g0 and n = 5.255876 [verified there]; the gas
// constant 8314.32 / 28.9644 is the standard's own [from memory] and reproduces that n.
//
// Functions whose formula holds over a limited range answer nothing outside it, and for arguments
// that are not finite. None of them throws.

#include <optional>

#include "model/units.hpp"

namespace linewright {

inline constexpr double sea_level_pressure_pa = 101'325;
inline constexpr double sea_level_temperature_k = 288.15;
inline constexpr double lapse_rate_k_per_m = 0.0065;
inline constexpr double air_gas_constant_j_per_kg_k = 8314.32 / 28.9644;
inline constexpr double metres_per_foot = 0.3048;

/// Heights over which the layer is defined: -5,000 m [from memory] to 11,000 m, which is 36,089 ft
/// [verified: layer tables of the standard].
inline constexpr double lowest_altitude_ft = -5'000 / metres_per_foot;
inline constexpr double highest_altitude_ft = 11'000 / metres_per_foot;

constexpr double pascals_from_inhg(double pressure_inhg) {
  return pressure_inhg * pascals_per_inhg;
}
constexpr double inhg_from_pascals(double pressure_pa) {
  return pressure_pa / pascals_per_inhg;
}

/// One degree Fahrenheit is exactly 5/9 K, and 32 F exactly 273.15 K.
inline constexpr double kelvins_per_degf = 5.0 / 9.0;
constexpr double kelvins_from_degf(double temperature_degf) {
  return 273.15 + (temperature_degf - 32) * kelvins_per_degf;
}

/// Standard temperature at a height: T0 - L H.
std::optional<double> standard_temperature_k(double altitude_ft);

/// Standard pressure at a height.
std::optional<double> standard_pressure_pa(double altitude_ft);

/// Height at which the standard atmosphere has this pressure, which is pressure altitude; the exact
/// inverse of `standard_pressure_pa`.
std::optional<double> pressure_altitude_ft(double pressure_pa);

/// Density of dry air by the gas law, rho = p / (R T). Any positive pressure and temperature; humid
/// air is up to about 2 % lighter on a hot day.
std::optional<double> air_density_kg_per_m3(double pressure_pa, double temperature_k);

/// How standard pressure changes with height: dp/dH = -rho g0, Pa per foot, always negative.
std::optional<double> standard_pressure_gradient_pa_per_ft(double altitude_ft);

/// What an altimeter reads at a pressure when its subscale is set to `altimeter_setting_pa`.
/// Turning the subscale shifts the whole scale by the height of the setting, so that the reading is
///   H(p) - H(setting)
/// with H the pressure altitude. This is the relation of 14 CFR Part 43 Appendix E Table IV.
std::optional<double> indicated_altitude_ft(double pressure_pa, double altimeter_setting_pa);

/// Pressure at which an altimeter so set reads `indicated_ft`; the exact inverse of the above:
///   p^(1/n) = setting^(1/n) - P0^(1/n) indicated L / T0.
/// With the field's elevation it is the ambient pressure there, which is what the altimeter setting
/// is defined by. The weather services' 0.3 hPa for the height of the barometer is not in it.
std::optional<double> pressure_at_indicated_pa(double indicated_ft, double altimeter_setting_pa);

}  // namespace linewright
