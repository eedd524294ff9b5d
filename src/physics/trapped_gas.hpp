#pragma once
// Air sealed in a system under test: the stroke that brings it to a pressure, how a leak lets it
// back and what temperature does to it. Volumes are cubic inches, pressures absolute pascals unless
// called a differential, times seconds, temperatures kelvins.
//
// All of it is the gas law p V = m R T [from memory] with temperature constant where it is not the
// subject: true once the air has taken the tubes' temperature again, some seconds after a stroke.
// The pump's or syringe's own dead volume and hose count as part of the system's volume.
//
// Functions answer nothing for arguments outside their range (zero or negative volumes and
// pressures, pressures on the wrong side, what is not finite). None of them throws.

#include <optional>

namespace linewright {

/// Volume to draw out of a sealed volume with a closed syringe to bring it from ambient down to a
/// target: p0 V = p1 (V + s), so s = V (p0 / p1 - 1). Target not above ambient.
std::optional<double> suction_stroke_in3(double volume_in3, double ambient_pa, double target_pa);

/// Volume of ambient air to push in from a syringe to bring a sealed volume from ambient up to a
/// target: p0 (V + s) = p1 V, so s = V (p1 / p0 - 1). Target not below ambient.
std::optional<double> pressure_stroke_in3(double volume_in3, double ambient_pa, double target_pa);

/// Pressure after a number of strokes of a pump that takes `displacement_in3` out and throws it
/// away each time: p0 (V / (V + s))^n. The first stroke equals a syringe's.
std::optional<double> pressure_after_suction_strokes_pa(double volume_in3, double displacement_in3,
                                                        double ambient_pa, int strokes);

/// Pressure after a number of strokes that each push in `displacement_in3` of ambient air:
/// p0 (1 + n s / V).
std::optional<double> pressure_after_pressure_strokes_pa(double volume_in3, double displacement_in3,
                                                         double ambient_pa, int strokes);

/// Above this many strokes the pump is no tool for the job, and there is no answer.
inline constexpr int most_strokes = 1'000'000;

/// Fewest whole suction strokes that reach the target: ln(p0 / p1) / ln(1 + s / V), rounded up.
std::optional<int> suction_strokes(double volume_in3, double displacement_in3, double ambient_pa,
                                   double target_pa);

/// Fewest whole pressure strokes that reach the target: (p1 / p0 - 1) V / s, rounded up.
std::optional<int> pressure_strokes(double volume_in3, double displacement_in3, double ambient_pa,
                                    double target_pa);

/// What is left of a differential to ambient after a time, when the leak passes flow in proportion
/// to it: D exp(-t / tau). Fair for differentials small against ambient. A differential of either
/// sign.
std::optional<double> differential_after_pa(double initial_pa, double time_s,
                                            double time_constant_s);

/// Time constant that takes a differential from `initial_pa` to `later_pa` in a time:
/// tau = t / ln(D0 / D1). Both of the same sign and the later one smaller; where nothing is lost
/// there is no time constant, and no answer.
std::optional<double> leak_time_constant_s(double initial_pa, double later_pa, double time_s);

/// Mean leak over a period, as volume of ambient air: V (dp / dt) / p0, in3/min, for a pressure
/// change `change_pa` in `period_s`. Positive for air leaking in, as into a static system under
/// suction.
std::optional<double> leak_flow_in3_per_min(double volume_in3, double change_pa, double period_s,
                                            double ambient_pa);

/// Pressure change of a sealed, rigid volume that warms throughout by `change_k`: dp = p dT / T. If
/// only part of the volume warms, take that part of the change.
std::optional<double> pressure_change_pa(double pressure_pa, double temperature_k, double change_k);

/// Altimeter change of a sealed static system at a pressure for a temperature change, feet. Warming
/// lowers the reading, which looks like a leak; cooling hides one. In the standard troposphere
/// only.
std::optional<double> altitude_change_ft(double pressure_pa, double temperature_k, double change_k);

/// Airspeed indicator change of a sealed pitot system for a temperature change, knots, the static
/// side open to `static_pa`. Warming raises the reading. Nothing where cooling takes the pitot
/// pressure below static.
std::optional<double> airspeed_change_kt(double static_pa, double calibrated_kt,
                                         double temperature_k, double change_k);

}  // namespace linewright
