#pragma once
// What a logged temperature says about the air in the lines.

#include "model/leak_log.hpp"

namespace linewright {

/// A thermometer that stands still takes no doubt away: it may hang away from the lines, or trail.
enum class ThermometerSight { none, still, moves };

struct ThermometerEvidence {
  ThermometerSight sight = ThermometerSight::none;
  double moved_degf = 0;        ///< means of thirds of the log
  double noise_degf = 0;        ///< of one temperature: rounding and scatter, standard deviation
  double error_degf = 0;        ///< of a difference of two temperatures: rounding and scatter, 95 %
  double bend_degf_per_s2 = 0;  ///< how its rate of change changes
};

/// Less than this may be the thermometer's own wandering [common practice, no source].
inline constexpr double least_thermometer_move_degf = 0.2;
/// A thermometer trails the air by a time constant of up to so much [common practice, no source].
inline constexpr double longest_thermometer_lag_s = 120;

ThermometerEvidence thermometer_evidence(const LeakLog& log);

/// How much more than the thermometer the air may have warmed in a period, if it trails: below zero
/// where the air cooled more. With time constant L the air is at T + L dT/dt.
double unseen_by_lag_degf(const ThermometerEvidence& thermometer, double period_s);

}  // namespace linewright
