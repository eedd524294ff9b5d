#pragma once
// Control cables under load, heat and friction. Inches, pounds-force, degrees Fahrenheit, radians.

#include <span>

#include "model/project.hpp"
#include "physics/deflection.hpp"

namespace linewright {

/// Expansion of the aluminium airframe per degree Fahrenheit [verified: engineering tables, linear
/// expansion of metals: 2024 12.7e-6, 6061 13.1e-6].
inline constexpr double airframe_expansion_per_degf = 12.8e-6;

/// A length of cable; its stiffness AE is above zero. Its weight matters only to how it sags.
struct CableLength {
  double length_in = 0;
  double weight_lb_per_in = 0;
  double axial_stiffness_lbf = 0;
};

/// Elastic stretch P L / (AE) [from memory: strength-of-materials texts].
double cable_stretch_in(double load_lbf, const CableLength& cable);

/// Rise of a cable's tension per degree of warming in a rigid airframe: (α_airframe − α_cable) AE
/// [calculated]. Real structure gives, so the true change is smaller.
double tension_slope_lbf_per_degf(const Expansions& expansions, double axial_stiffness_lbf);

/// A cable tied to the airframe at both ends. Stiffness is AE / L and above zero.
struct TiedCable {
  double stiffness_lbf_per_in = 0;
  double outgrown_in_per_degf = 0;  ///< (α_airframe − α_cable) L: what the airframe gains on it
};

/// Rise of a cable's tension per degree of warming in an airframe that gives, whose ends come
/// `1 / airframe_stiffness` nearer for each pound of all cables that pull on them. Alone it is
/// (α_airframe − α_cable) L / (L / AE + 1 / k), two springs in series; with `others` beside it all
/// shorten the one airframe, and k_i (g_i − Σ k g / (k_airframe + Σ k)) is left to each, where k is
/// stiffness and g what the airframe gains [calculated]. Tends to the rigid airframe's as the
/// airframe stiffens.
double tied_tension_slope_lbf_per_degf(const TiedCable& cable, std::span<const TiedCable> others,
                                       double airframe_stiffness_lbf_per_in);

/// Extremes of a cable's tension over the temperature range, and where they fall.
struct TensionRange {
  double lowest_lbf = 0;  ///< below zero: slack by that much stretch
  double lowest_at_degf = 0;
  double highest_lbf = 0;
  double highest_at_degf = 0;
};

/// Tension over the range of a cable rigged to `rigged_lbf` at the rigging temperature.
TensionRange tension_range(double rigged_lbf, double slope_lbf_per_degf,
                           const TemperatureRange& range);

/// A cable at a tension; its stiffness is AE / L, above zero.
struct TautCable {
  double tension_lbf = 0;
  double stiffness_lbf_per_in = 0;
};

/// Tension left in one cable of a pair that turns a rigid control, while the other carries
/// `load_lbf`: the loaded one stretches by (P − T) L / (AE), the slack one gives up as much
/// [calculated]. For two alike at one tension that is 2 T − P: slack from a load of twice the
/// tension. Never above its own tension; below zero: slack by that much stretch. An airframe that
/// comes nearer by `airframe_give_in_per_lbf` for each pound beyond what both cables had leaves
/// that much over of either; 0 for a rigid one.
double slack_side_tension_lbf(const TautCable& slack, const TautCable& loaded, double load_lbf,
                              double airframe_give_in_per_lbf = 0);

/// Tension on the pulled side over that on the other of a cable that slides round a guide:
/// exp(μ θ) [from memory: capstan equation].
double capstan_ratio(double friction, double wrap_rad);

/// Push of a cable on what turns it: 2 T sin(θ/2) [from memory: statics].
double guide_push_lbf(double tension_lbf, double turn_rad);

/// Sag of a cable strung without tension, which carries its weight by stretching alone:
/// T = AE 8/3 (f/L)² and f = w L² / (8 T) give f = L ∛(3 w L / (64 AE)) [calculated]. No cable that
/// is strung tighter sags as far.
double untensioned_sag_in(const CableLength& cable);

/// Sag of a cable under `tension_lbf`, a string's sag capped by that of an untensioned cable. Below
/// zero it is slack: its weight is carried as if it had been strung without tension.
double cable_sag_in(const CableLength& cable, double tension_lbf);

/// How far a cable drifts out of a pulley's plane over a lead measured in the plane: L tan(θ)
/// [calculated].
double off_plane_drift_in(double lead_in, double off_plane_rad);

}  // namespace linewright
