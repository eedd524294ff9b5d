#include "planning/leak_gauge.hpp"

#include "physics/airspeed.hpp"
#include "physics/atmosphere.hpp"

namespace linewright {

std::optional<double> LeakGauge::pressure_pa(double reading) const {
  if (is_static()) return pressure_at_indicated_pa(reading, altimeter_setting_pa);
  const auto impact_pa = impact_pressure_pa(reading);
  if (!impact_pa) return std::nullopt;
  return ambient_pa + *impact_pa;
}

std::optional<double> LeakGauge::reading(double pressure_pa) const {
  if (is_static()) return indicated_altitude_ft(pressure_pa, altimeter_setting_pa);
  if (pressure_pa <= ambient_pa) return 0;
  return calibrated_airspeed_kt(pressure_pa - ambient_pa);
}

double LeakGauge::differential_pa(double pressure_pa) const {
  return is_static() ? ambient_pa - pressure_pa : pressure_pa - ambient_pa;
}

double LeakGauge::pressure_at_differential_pa(double differential_pa) const {
  return is_static() ? ambient_pa - differential_pa : ambient_pa + differential_pa;
}

}  // namespace linewright
