#include "physics/atmosphere.hpp"

#include <cmath>

namespace linewright {

namespace {

constexpr double pressure_exponent =
    gravity_m_per_s2 / (air_gas_constant_j_per_kg_k * lapse_rate_k_per_m);
constexpr double temperature_scale_ft =
    sea_level_temperature_k / lapse_rate_k_per_m / metres_per_foot;

/// Slack at the ends of the layer, so that a height taken to pressure and back stays inside.
constexpr double altitude_rounding_ft = 1e-6;

/// False also for what is not a number.
bool in_layer(double altitude_ft) {
  return altitude_ft >= lowest_altitude_ft - altitude_rounding_ft &&
         altitude_ft <= highest_altitude_ft + altitude_rounding_ft;
}

}  // namespace

std::optional<double> standard_temperature_k(double altitude_ft) {
  if (!in_layer(altitude_ft)) return std::nullopt;
  return sea_level_temperature_k - lapse_rate_k_per_m * metres_per_foot * altitude_ft;
}

// log1p and expm1 keep small heights exact, so that differences of a foot keep all their digits.
std::optional<double> standard_pressure_pa(double altitude_ft) {
  if (!in_layer(altitude_ft)) return std::nullopt;
  return sea_level_pressure_pa *
         std::exp(pressure_exponent * std::log1p(-altitude_ft / temperature_scale_ft));
}

std::optional<double> pressure_altitude_ft(double pressure_pa) {
  if (!(pressure_pa > 0)) return std::nullopt;
  const double altitude_ft =
      -temperature_scale_ft *
      std::expm1(std::log(pressure_pa / sea_level_pressure_pa) / pressure_exponent);
  if (!in_layer(altitude_ft)) return std::nullopt;
  return altitude_ft;
}

std::optional<double> air_density_kg_per_m3(double pressure_pa, double temperature_k) {
  if (!(pressure_pa > 0) || !(temperature_k > 0)) return std::nullopt;
  const double density = pressure_pa / (air_gas_constant_j_per_kg_k * temperature_k);
  if (!std::isfinite(density)) return std::nullopt;
  return density;
}

std::optional<double> standard_pressure_gradient_pa_per_ft(double altitude_ft) {
  const auto pressure_pa = standard_pressure_pa(altitude_ft);
  const auto temperature_k = standard_temperature_k(altitude_ft);
  if (!pressure_pa || !temperature_k) return std::nullopt;
  const auto density = air_density_kg_per_m3(*pressure_pa, *temperature_k);
  if (!density) return std::nullopt;
  return -*density * gravity_m_per_s2 * metres_per_foot;
}

std::optional<double> indicated_altitude_ft(double pressure_pa, double altimeter_setting_pa) {
  const auto altitude_ft = pressure_altitude_ft(pressure_pa);
  const auto setting_ft = pressure_altitude_ft(altimeter_setting_pa);
  if (!altitude_ft || !setting_ft) return std::nullopt;
  return *altitude_ft - *setting_ft;
}

std::optional<double> pressure_at_indicated_pa(double indicated_ft, double altimeter_setting_pa) {
  const auto setting_ft = pressure_altitude_ft(altimeter_setting_pa);
  if (!setting_ft) return std::nullopt;
  return standard_pressure_pa(indicated_ft + *setting_ft);
}

}  // namespace linewright
