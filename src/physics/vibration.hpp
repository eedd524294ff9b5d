#pragma once
// First natural frequencies of lines between their supports, and the exact shape of a hanging one
// beside the parabola of physics/deflection.hpp. Inches, pounds, psi, hertz. Lengths, weights,
// moduli, second moments and tensions must be above zero.

#include "physics/deflection.hpp"

namespace linewright {

/// Standard gravity, in/s² [verified: 9.80665 m/s² by definition].
inline constexpr double gravity_in_per_s2 = 9.80665 / 0.0254;

/// First frequency of a taut string: (1/2L) √(T g / w) [from memory: vibration texts]. Bending
/// stiffness, which a cable has little of, would raise it.
double taut_string_frequency_hz(const HangingString& string);

/// How the two ends of a beam are held.
enum class BeamEnds { pinned_pinned, pinned_clamped, clamped_clamped, clamped_free };

/// k in the first frequency (k/2π) √(E I g / (w L⁴)): clamped-clamped 22.373 and clamped-free 3.516
/// [verified: Thomson, Theory of Vibration, App. D], pinned-clamped 15.418 [verified, secondary:
/// 1977 rotorcraft structural manual on a calculator page, to 15.4], pinned-pinned π² [from
/// memory].
double first_mode_constant(BeamEnds ends);

/// First frequency of an evenly loaded straight beam.
double beam_frequency_hz(BeamEnds ends, const EvenBeam& beam);

/// Propeller speed at which a frequency is met by what shakes `times_per_turn` times in a turn.
double meeting_rpm(double frequency_hz, double times_per_turn);

/// Sag of a line hanging between two level supports, exact: a (cosh(L/2a) − 1), a = H/w, with H the
/// tension in the middle [verified, secondary: catenary calculator page].
double catenary_sag_in(const HangingString& string);

/// Its length between the supports: 2 a sinh(L/2a) [verified, secondary: the same].
double catenary_length_in(const HangingString& string);

}  // namespace linewright
