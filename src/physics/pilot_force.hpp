#pragma once
// What a pilot can pull on a control, and what that puts into its cable.

#include <array>
#include <optional>
#include <string_view>

#include "model/network.hpp"

namespace linewright {

/// Limit forces of the pilot on one control, for aeroplanes up to 5,000 lb [verified: 14 CFR
/// 23.397(b)].
struct PilotForce {
  std::string_view control;
  std::string_view grip;  ///< "the rudder pedal"
  double most_lbf = 0;
  double least_lbf = 0;  ///< however light the hinge moments make the control
};

inline constexpr std::array pilot_forces{
    PilotForce{"rudder", "the rudder pedal", 200, 150},
    PilotForce{"elevator", "the elevator stick", 167, 100},
    PilotForce{"aileron", "the aileron stick", 67, 40},
};

/// The same of a wheel [verified]. An aileron wheel's is a couple of 50 D, or 40 D, inch-pounds:
/// one force at its rim, half of D from the middle, that turns it as hard is 100, or 80, lbf,
/// whatever its diameter D [calculated]. The single force of 1.25 times the couple's, 62.5 lbf, is
/// for parts that a couple does not load; a cable is pulled less by it.
inline constexpr std::array wheel_forces{
    PilotForce{"elevator", "the elevator wheel", 200, 100},
    PilotForce{"aileron", "the rim of the aileron wheel", 100, 80},
};

/// Those of a route's control, as it is worked: by a stick where nothing is stated. Or nullptr.
const PilotForce* pilot_forces_on(const Route& route);

/// Up to this weight the forces are as they stand, lbf; above it the most of them rise in a
/// straight line to `heaviest_factor` times at the heaviest [verified: 14 CFR 23.397(b), note 1].
inline constexpr double light_weight_lbf = 5'000;
inline constexpr double heaviest_weight_lbf = 12'500;
inline constexpr double heaviest_factor = 1.18;

/// What the most of a force is multiplied by for the aeroplane's weight.
double weight_factor(double weight_lbf);

/// The most of the table on the route's control at the aeroplane's weight, no more than 5,000 lbf
/// where none is stated. Nothing where the table has not its control.
std::optional<double> most_pilot_force_lbf(const Route& route);

/// The pilot's limit force on the route's control: the builder's, else the most of the table.
/// Nothing where the route has no lever ratio, or the table not its control.
std::optional<double> pilot_force_lbf(const Route& route);

/// True where that force is the table's, because the route states a lever ratio only.
bool takes_pilot_force(const Route& route);

/// Two pilots of a dual control together: each 0.75 times the force of one [from memory: 14 CFR
/// 23.399(b); 25.399(b) and 27.399(b) say the same, verified].
inline constexpr double two_pilots_ratio = 2 * 0.75;

/// That force times the lever ratio, of two pilots together where the project has dual controls:
/// what can be pulled on the cable.
std::optional<double> pilot_pull_lbf(const Route& route);

/// The load of a cable at its control's limit: as stated, else the pilot's pull.
std::optional<double> limit_load_lbf(const Route& route);

/// The larger of both: how hard the control pulls on its cable at the limit.
std::optional<double> limit_pull_lbf(const Route& route);

/// Tension of a pulled cable that is at `rest_lbf`, with nothing known of a second one: as if there
/// were one like it, which leaves it half of the pull above its own tension until that one is slack
/// and all of the pull from there [calculated].
double pulled_alone_lbf(double rest_lbf, double pull_lbf);

}  // namespace linewright
