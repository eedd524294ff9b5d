#include "physics/trapped_gas.hpp"

#include <algorithm>
#include <cmath>

#include "physics/airspeed.hpp"
#include "physics/atmosphere.hpp"

namespace linewright {

namespace {

/// Slack in counting strokes, so that a target met exactly needs no further stroke.
constexpr double stroke_rounding = 1e-9;

bool is_positive(double value) {
  return value > 0 && std::isfinite(value);
}

/// Nothing where extreme arguments have overflowed.
std::optional<double> if_finite(double value) {
  if (!std::isfinite(value)) return std::nullopt;
  return value;
}

std::optional<int> whole_strokes(double strokes) {
  if (!(strokes <= most_strokes)) return std::nullopt;
  return static_cast<int>(std::max(0.0, std::ceil(strokes - stroke_rounding)));
}

}  // namespace

std::optional<double> suction_stroke_in3(double volume_in3, double ambient_pa, double target_pa) {
  if (!is_positive(volume_in3) || !is_positive(ambient_pa) || !is_positive(target_pa) ||
      target_pa > ambient_pa)
    return std::nullopt;
  return if_finite(volume_in3 * ((ambient_pa - target_pa) / target_pa));
}

std::optional<double> pressure_stroke_in3(double volume_in3, double ambient_pa, double target_pa) {
  if (!is_positive(volume_in3) || !is_positive(ambient_pa) || !is_positive(target_pa) ||
      target_pa < ambient_pa)
    return std::nullopt;
  return if_finite(volume_in3 * ((target_pa - ambient_pa) / ambient_pa));
}

std::optional<double> pressure_after_suction_strokes_pa(double volume_in3, double displacement_in3,
                                                        double ambient_pa, int strokes) {
  if (!is_positive(volume_in3) || !is_positive(displacement_in3) || !is_positive(ambient_pa) ||
      strokes < 0)
    return std::nullopt;
  return if_finite(ambient_pa * std::exp(-strokes * std::log1p(displacement_in3 / volume_in3)));
}

std::optional<double> pressure_after_pressure_strokes_pa(double volume_in3, double displacement_in3,
                                                         double ambient_pa, int strokes) {
  if (!is_positive(volume_in3) || !is_positive(displacement_in3) || !is_positive(ambient_pa) ||
      strokes < 0)
    return std::nullopt;
  return if_finite(ambient_pa * (1 + strokes * (displacement_in3 / volume_in3)));
}

std::optional<int> suction_strokes(double volume_in3, double displacement_in3, double ambient_pa,
                                   double target_pa) {
  const auto stroke_in3 = suction_stroke_in3(volume_in3, ambient_pa, target_pa);
  if (!stroke_in3 || !is_positive(displacement_in3)) return std::nullopt;
  const double log_per_stroke = std::log1p(displacement_in3 / volume_in3);
  if (!is_positive(log_per_stroke)) return std::nullopt;
  return whole_strokes(std::log1p(*stroke_in3 / volume_in3) / log_per_stroke);
}

std::optional<int> pressure_strokes(double volume_in3, double displacement_in3, double ambient_pa,
                                    double target_pa) {
  const auto stroke_in3 = pressure_stroke_in3(volume_in3, ambient_pa, target_pa);
  if (!stroke_in3 || !is_positive(displacement_in3)) return std::nullopt;
  return whole_strokes(*stroke_in3 / displacement_in3);
}

std::optional<double> differential_after_pa(double initial_pa, double time_s,
                                            double time_constant_s) {
  if (!(time_s >= 0) || !std::isfinite(time_s) || !is_positive(time_constant_s))
    return std::nullopt;
  return if_finite(initial_pa * std::exp(-time_s / time_constant_s));
}

std::optional<double> leak_time_constant_s(double initial_pa, double later_pa, double time_s) {
  if (!is_positive(time_s) || later_pa == 0) return std::nullopt;
  const double ratio = initial_pa / later_pa;
  if (!std::isfinite(ratio) || !(ratio > 1)) return std::nullopt;
  return if_finite(time_s / std::log(ratio));
}

std::optional<double> leak_flow_in3_per_min(double volume_in3, double change_pa, double period_s,
                                            double ambient_pa) {
  if (!is_positive(volume_in3) || !is_positive(period_s) || !is_positive(ambient_pa))
    return std::nullopt;
  return if_finite(volume_in3 * (change_pa / ambient_pa) / period_s * 60);
}

std::optional<double> pressure_change_pa(double pressure_pa, double temperature_k,
                                         double change_k) {
  if (!is_positive(pressure_pa) || !is_positive(temperature_k) || !(temperature_k + change_k > 0))
    return std::nullopt;
  return if_finite(pressure_pa * (change_k / temperature_k));
}

std::optional<double> altitude_change_ft(double pressure_pa, double temperature_k,
                                         double change_k) {
  const auto change_pa = pressure_change_pa(pressure_pa, temperature_k, change_k);
  if (!change_pa) return std::nullopt;
  const auto before_ft = pressure_altitude_ft(pressure_pa);
  const auto after_ft = pressure_altitude_ft(pressure_pa + *change_pa);
  if (!before_ft || !after_ft) return std::nullopt;
  return *after_ft - *before_ft;
}

std::optional<double> airspeed_change_kt(double static_pa, double calibrated_kt,
                                         double temperature_k, double change_k) {
  const auto impact_pa = impact_pressure_pa(calibrated_kt);
  if (!impact_pa || !is_positive(static_pa)) return std::nullopt;
  const auto change_pa = pressure_change_pa(static_pa + *impact_pa, temperature_k, change_k);
  if (!change_pa) return std::nullopt;
  const auto after_kt = calibrated_airspeed_kt(*impact_pa + *change_pa);
  if (!after_kt) return std::nullopt;
  return *after_kt - calibrated_kt;
}

}  // namespace linewright
