#pragma once
// The air after the pump has stopped.
//
// A quick stroke cools the air in the lines, and air bled back in after an overshoot warms it [gas
// law of a sudden change, T ~ p^(2/7)]. Within a minute or so the walls bring it back, and the
// needle runs on or is held up meanwhile, leak or no leak: A exp(-t / tau) on top of what leaks.
// A log is judged from where that has worn off.

#include "planning/leak_balance.hpp"

namespace linewright {

/// Time constants with which air takes the temperature of tubes and instrument cases: conduction
/// and slow convection across a case of 1.5 in radius give some 15 s, r^2 / (5.8 a) with air's
/// a = 0.22 cm2/s, across a tube under one [calculated]; four times the former is taken as the
/// most.
inline constexpr double slowest_settling_s = 60;

/// How the first readings part from a plain leak.
struct Settling {
  bool seen = false;        ///< beyond scatter
  double amplitude_pa = 0;  ///< A: positive where the needle falls faster at first
  double time_constant_s = 0;
  double settled_s = 0;  ///< time in the log from which less than `negligible_pa` of A goes in
                         ///< any minute
};

/// Only what a settling explains down to scatter is one: a leak that opens or closes is not.
/// `error_pa`: the standard deviation of one reading, rounding at the least.
Settling find_settling(const AirBalance& balance, double error_pa, double negligible_pa);

/// True where a leak of at most `most_rate_per_s` with a settling of at most `most_settling_pa`
/// explains the readings as well as their noise allows: such a log shows no larger leak.
bool settling_explains(const AirBalance& balance, double most_rate_per_s, double most_settling_pa,
                       double noise_pa);

}  // namespace linewright
