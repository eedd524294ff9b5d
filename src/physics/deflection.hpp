#pragma once
// How far a line hangs, bows or grows between its supports. Inches, pounds, psi and degrees
// Fahrenheit; loads are weights, multiplied by a load factor where the caller wants one. Spans,
// moduli, second moments and tensions must be above zero. A surplus of length below zero means a
// line drawn straight, so it bows by nothing.

namespace linewright {

/// Second moment of area of a round tube about a diameter, in⁴: π (OD⁴ − ID⁴) / 64
/// [from memory: strength-of-materials texts].
double tube_second_moment_in4(double outside_diameter_in, double inside_diameter_in);

/// An evenly loaded straight beam.
struct EvenBeam {
  double length_in = 0;
  double weight_lb_per_in = 0;
  double youngs_modulus_psi = 0;
  double second_moment_in4 = 0;
};

/// A line that its tension alone carries; of a catenary, the tension in its middle.
struct HangingString {
  double length_in = 0;  ///< between its two supports
  double weight_lb_per_in = 0;
  double tension_lbf = 0;
};

/// How much a line and the airframe about it grow for each degree.
struct Expansions {
  double line_per_degf = 0;
  double airframe_per_degf = 0;
};

/// Mid-span sag of an evenly loaded beam with both ends clamped: w L⁴ / (384 E I)
/// [from memory: beam tables].
double clamped_beam_sag_in(const EvenBeam& beam);

/// Mid-span sag of an evenly loaded beam with both ends pinned: 5 w L⁴ / (384 E I)
/// [from memory: beam tables].
double pinned_beam_sag_in(const EvenBeam& beam);

/// Sag of the free tip of an evenly loaded beam with the other end clamped: w L⁴ / (8 E I)
/// [from memory: beam tables].
double cantilever_tip_sag_in(const EvenBeam& beam);

/// Mid-span sag of a string under tension, as a parabola: w L² / (8 T)
/// [verified: structures text on cables, eqs. 5.13 to 5.16]. Good for sags under a tenth of L.
double string_sag_in(const HangingString& string);

/// Sideways reach at mid-span of a limp line that is longer than its span by `surplus_in`, as a
/// parabola: √(3 L δ / 8) [calculated: the first two terms of the length of a parabola].
double slack_string_bow_in(double length_in, double surplus_in);

/// The same of a stiff line clamped at both ends, which takes the shape of a cosine:
/// (2/π) √(L δ) [calculated: the first term of the length of a clamped cosine].
double clamped_tube_bow_in(double length_in, double surplus_in);

/// Half the width of the ellipsoid that a line of `string_length_in` between two supports
/// `foci_distance_in` apart can never leave, whatever its shape: ½ √(S² − c²) [calculated].
double ellipsoid_half_width_in(double foci_distance_in, double string_length_in);

/// How much more a line grows than the airframe over a rise in temperature, inches; below zero
/// where it shrinks against it: L (α_line − α_airframe) ΔT [from memory: linear expansion].
double thermal_growth_in(double length_in, const Expansions& expansions, double rise_degf);

}  // namespace linewright
