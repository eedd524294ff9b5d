#pragma once
// Impact pressure and calibrated airspeed, compressible and subsonic.
//
//   qc = P0 [ (1 + 0.2 (Vc / a0)^2)^3.5 - 1 ],   Vc = a0 sqrt( 5 [ (qc / P0 + 1)^(2/7) - 1 ] )
//
// [verified: a builders' table computed from NASA RP-1046 Tables A19 and A27]. Calibrated airspeed
// is defined by impact pressure alone, with P0 and a0 of the standard sea level, so that the same
// pressure belongs to a speed at every field.

#include <optional>

#include "physics/atmosphere.hpp"

namespace linewright {

/// Speed of sound of the standard sea level: sqrt(1.4 R T0) = 340.2941 m/s, with 1 kt = 1,852 m per
/// hour exactly. Printed as 661.48 kt [verified: page on calibrated airspeed].
inline constexpr double sea_level_sound_speed_kt = 661.478'827'231'6;

/// Water columns. An inch of water at 20 C: P0 is 407.513 in [verified: the builders' table named
/// above]. At 4 C: 249.089 Pa [from memory]. They differ by 0.18 %.
inline constexpr double pascals_per_inh2o_20c = sea_level_pressure_pa / 407.513;
inline constexpr double pascals_per_inh2o_4c = 249.089;

constexpr double inh2o_20c_from_pascals(double pressure_pa) {
  return pressure_pa / pascals_per_inh2o_20c;
}
constexpr double inh2o_4c_from_pascals(double pressure_pa) {
  return pressure_pa / pascals_per_inh2o_4c;
}

/// Impact pressure (pitot less static) at a calibrated airspeed, Pa. From 0 kt to a0; nothing
/// outside that, or for what is not a number.
std::optional<double> impact_pressure_pa(double calibrated_kt);

/// Calibrated airspeed at an impact pressure, kt; the exact inverse of the above. From 0 Pa to that
/// of a0 (90,476 Pa). Nothing where pitot is below static: an airspeed indicator has no reading for
/// it.
std::optional<double> calibrated_airspeed_kt(double impact_pa);

}  // namespace linewright
