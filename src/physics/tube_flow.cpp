#include "physics/tube_flow.hpp"

#include <cmath>
#include <numbers>

#include "model/units.hpp"

namespace linewright {

namespace {

using std::numbers::pi;

constexpr double coldest_air_k = 170;
constexpr double hottest_air_k = 1'900;

bool is_positive(double value) {
  return value > 0 && std::isfinite(value);
}
bool is_zero_or_more(double value) {
  return value >= 0 && std::isfinite(value);
}

/// Nothing where extreme arguments have overflowed.
std::optional<double> if_finite(double value) {
  if (!std::isfinite(value)) return std::nullopt;
  return value;
}

/// Mean speed of the air over the whole area of a sharp-edged hole.
double orifice_speed_in_per_s(double pressure_difference_pa, double density_kg_per_m3) {
  return sharp_orifice_discharge_coefficient *
         std::sqrt(2 * pressure_difference_pa / density_kg_per_m3) / m_per_in;
}

}  // namespace

std::optional<double> air_viscosity_pa_s(double temperature_k) {
  if (!(temperature_k >= coldest_air_k) || !(temperature_k <= hottest_air_k)) return std::nullopt;
  return 1.458e-6 * temperature_k * std::sqrt(temperature_k) / (temperature_k + 110.4);
}

std::optional<double> laminar_resistance_pa_s_per_in3(double length_in, double bore_in,
                                                      double viscosity_pa_s) {
  if (!is_zero_or_more(length_in) || !is_positive(bore_in) || !is_positive(viscosity_pa_s))
    return std::nullopt;
  // Divided bore by bore, because the fourth power of a tiny bore is zero in a double.
  return if_finite(128 * viscosity_pa_s / pi * (length_in / bore_in) / bore_in / bore_in / bore_in);
}

std::optional<double> tube_reynolds_number(double flow_in3_per_s, double bore_in,
                                           double density_kg_per_m3, double viscosity_pa_s) {
  if (!is_positive(bore_in) || !is_positive(density_kg_per_m3) || !is_positive(viscosity_pa_s))
    return std::nullopt;
  const double flow_over_bore_m2_per_s = std::abs(flow_in3_per_s) / bore_in * m_per_in * m_per_in;
  return if_finite(4 * density_kg_per_m3 * flow_over_bore_m2_per_s / (pi * viscosity_pa_s));
}

std::optional<double> tube_volume_in3(double length_in, double bore_in) {
  if (!is_zero_or_more(length_in) || !is_positive(bore_in)) return std::nullopt;
  return if_finite(pi * bore_in * bore_in * length_in / 4);
}

std::optional<double> breathing_flow_in3_per_s(double volume_in3, double pressure_rate_pa_per_s,
                                               double pressure_pa) {
  if (!is_zero_or_more(volume_in3) || !is_positive(pressure_pa)) return std::nullopt;
  return if_finite(volume_in3 * pressure_rate_pa_per_s / pressure_pa);
}

std::optional<double> lag_constant_s(double resistance_pa_s_per_in3, double volume_in3,
                                     double pressure_pa) {
  if (!is_zero_or_more(resistance_pa_s_per_in3) || !is_zero_or_more(volume_in3) ||
      !is_positive(pressure_pa))
    return std::nullopt;
  return if_finite(resistance_pa_s_per_in3 * volume_in3 / pressure_pa);
}

std::optional<double> lag_constant_s(const TubeWithVolume& line, double viscosity_pa_s,
                                     double pressure_pa) {
  const auto resistance =
      laminar_resistance_pa_s_per_in3(line.length_in, line.bore_in, viscosity_pa_s);
  const auto tube_in3 = tube_volume_in3(line.length_in, line.bore_in);
  if (!resistance || !tube_in3 || !is_zero_or_more(line.end_volume_in3)) return std::nullopt;
  return lag_constant_s(*resistance, line.end_volume_in3 + *tube_in3 / 2, pressure_pa);
}

std::optional<double> orifice_flow_in3_per_s(double diameter_in, double pressure_difference_pa,
                                             double density_kg_per_m3) {
  if (!is_positive(diameter_in) || !is_zero_or_more(pressure_difference_pa) ||
      !is_positive(density_kg_per_m3))
    return std::nullopt;
  return if_finite(pi * diameter_in * diameter_in / 4 *
                   orifice_speed_in_per_s(pressure_difference_pa, density_kg_per_m3));
}

std::optional<double> equivalent_orifice_in(double flow_in3_per_s, double pressure_difference_pa,
                                            double density_kg_per_m3) {
  if (!is_zero_or_more(flow_in3_per_s) || !is_positive(pressure_difference_pa) ||
      !is_positive(density_kg_per_m3))
    return std::nullopt;
  const double area_in2 =
      flow_in3_per_s / orifice_speed_in_per_s(pressure_difference_pa, density_kg_per_m3);
  return if_finite(std::sqrt(4 * area_in2 / pi));
}

}  // namespace linewright
