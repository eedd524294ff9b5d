#include "physics/airspeed.hpp"

#include <cmath>

namespace linewright {

namespace {

/// Slack at the sonic end, so that a speed taken to pressure and back stays inside.
constexpr double sonic_mach = 1 + 1e-12;

}  // namespace

// log1p and expm1 keep low speeds exact: at 10 kt the bracket is one part in six thousand.
std::optional<double> impact_pressure_pa(double calibrated_kt) {
  const double mach = calibrated_kt / sea_level_sound_speed_kt;
  if (!(mach >= 0) || !(mach <= sonic_mach)) return std::nullopt;
  return sea_level_pressure_pa * std::expm1(3.5 * std::log1p(0.2 * mach * mach));
}

std::optional<double> calibrated_airspeed_kt(double impact_pa) {
  if (!(impact_pa >= 0)) return std::nullopt;
  const double mach =
      std::sqrt(5 * std::expm1(2.0 / 7.0 * std::log1p(impact_pa / sea_level_pressure_pa)));
  if (!(mach <= sonic_mach)) return std::nullopt;
  return mach * sea_level_sound_speed_kt;
}

}  // namespace linewright
