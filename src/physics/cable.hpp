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

/// One cable of a closed loop, at rest: taut, or with a length left over. Its stiffness is AE / L,
/// above zero.
struct LoopedCable {
  double tension_lbf = 0;
  double slack_in = 0;  ///< above zero only without tension
  double stiffness_lbf_per_in = 0;

  /// How much it is stretched at rest; below zero where it is slack.
  double stretched_in() const { return tension_lbf / stiffness_lbf_per_in - slack_in; }
};

/// A loop while one of its cables is pulled.
struct PulledLoop {
  double pulled_lbf = 0;
  double other_lbf = 0;
  double other_slack_in = 0;  ///< of the other's whole length; above zero only without tension
};

/// Two cables of a closed loop between a lever at either end, pulled by `pull_lbf` in line with the
/// one and held at the far lever. Both lever arms are alike, so that the levers turn one end of the
/// loop against the other by d along the cables: the pulled one is stretched by d, the other
/// shortened by as much, and an airframe that gives g for each pound shortens both by s
/// [calculated]:
///
///     T1 = k1 (u1 + d - s)            u: stretch at rest, below zero: slack
///     T2 = k2 (u2 - d - s), or 0 and slack by what is below it
///     T1 - T2 = F                     the lever is in balance
///     s = g (T1 + T2 - rest), where rest is what both had together
///
/// With N = u1 + u2 + 2 g rest - F (1/k1 + 2 g) that leaves T2 = N / (1/k1 + 1/k2 + 4 g) while N is
/// above zero; below it the other is slack by -N and the pulled one carries the pull alone. Of two
/// alike at tension T in a rigid airframe each takes half of the pull, T + F/2 and T - F/2, to a
/// pull of 2 T, and the slack is (F - 2 T) / k beyond it.
PulledLoop pulled_loop(const LoopedCable& pulled, const LoopedCable& other, double pull_lbf,
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
