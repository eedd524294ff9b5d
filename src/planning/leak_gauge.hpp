#pragma once
// The instrument that a leak test is read from: an altimeter on a static system under suction, an
// airspeed indicator on a pitot system under pressure.

#include <optional>
#include <string_view>

#include "model/network.hpp"

namespace linewright {

/// Turns readings into the pressure in the sealed system and back. Readings are indicated feet with
/// the altimeter set to `altimeter_setting_pa`, or knots with the static side open to ambient.
struct LeakGauge {
  SystemKind kind = SystemKind::static_air;  ///< static_air or pitot
  double ambient_pa = 0;
  double altimeter_setting_pa = 0;

  bool is_static() const { return kind == SystemKind::static_air; }
  /// "ft" or "kt".
  std::string_view unit() const { return is_static() ? "ft" : "kt"; }

  /// Absolute pressure at a reading; nothing for a reading off the standard troposphere, below zero
  /// or supersonic.
  std::optional<double> pressure_pa(double reading) const;
  /// The reading at an absolute pressure. An airspeed indicator rests at zero where pitot is not
  /// above static.
  std::optional<double> reading(double pressure_pa) const;
  /// How far a pressure lies from ambient, positive the way the test takes it.
  double differential_pa(double pressure_pa) const;
  /// The inverse of `differential_pa`.
  double pressure_at_differential_pa(double differential_pa) const;
};

}  // namespace linewright
