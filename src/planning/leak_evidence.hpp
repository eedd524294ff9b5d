#pragma once
// What a log of a leak test shows, and how far each figure can be trusted.
//
// A needle tells pressure, and pressure goes with temperature as with the air that leaks: what no
// thermometer saw could have hidden a leak. How much is allowed for is stated here.

#include <optional>
#include <vector>

#include "model/leak_log.hpp"
#include "planning/leak_balance.hpp"
#include "planning/leak_fit.hpp"
#include "planning/leak_minute.hpp"
#include "planning/leak_needle.hpp"
#include "planning/leak_noise.hpp"
#include "planning/leak_settling.hpp"
#include "planning/leak_test_plan.hpp"
#include "planning/leak_thermometer.hpp"

namespace linewright {

// What is taken for granted where the log does not say [common practice, no source].

inline constexpr double assumed_reading_error_ft = 5;  ///< standard deviation, short logs
inline constexpr double assumed_reading_error_kt = 0.5;
inline constexpr double least_settled_s = 120;  ///< of readings, before a pass

/// Drift of the air's temperature that nobody saw, in a minute. With no thermometer, or one that
/// stood still, a pass allows for 1.5 degF in every minute and takes ten minutes of readings: an
/// aeroplane that comes to a hangar's temperature does so ever more slowly, so that a drift fast
/// enough to hide a leak in the first minutes lets it show in the last. To be fast enough for all
/// of ten minutes at a rate that hardly changes, the aeroplane would have to be 90 degF from the
/// air around it [calculated: 2 degF a minute that falls to 1.6 in 600 s has a time constant of
/// 2,700 s].
inline constexpr double unseen_drift_to_pass_degf = 1.5;
inline constexpr double least_without_thermometer_s = 600;
inline constexpr double unseen_drift_to_fail_degf = 0.5;
/// Beside a thermometer that moved by a quarter of a degree in a minute and more. One that moved
/// less may as well have seen nothing, and the doubt grows to that of none.
inline constexpr double unseen_beside_thermometer_degf = 0.4;
inline constexpr double telling_drift_degf_per_min = 0.25;
inline constexpr double share_not_followed = 0.25;        ///< of a temperature correction
inline constexpr double most_correction_degf = 2;         ///< in a minute
inline constexpr double least_telling_change_degf = 0.5;  ///< less may be the thermometer's noise

inline constexpr double least_start_share = 0.9;  ///< of the test's pressure
inline constexpr double longest_gap_s = 90;       ///< between two readings
/// What is too little to matter, as a share of the limit: of a needle's move, of what settling
/// still takes in a minute.
inline constexpr double negligible_share = 0.03;
inline constexpr double share_that_stands_out = 0.1;  ///< of the limit, a reading among others

/// Everything the verdict rests on, worked out once. Losses are in the gauge's unit.
struct LeakEvidence {
  const LeakTestPlan* plan = nullptr;
  PressureLog log;       ///< what is judged: temperatures in it only where the thermometer moved
  Settling settling;     ///< of the whole log
  bool settled = true;   ///< a full period is left once the settling has worn off
  double settled_s = 0;  ///< what is left of the log then
  bool full_minute = false;  ///< the log judged covers the limit's period
  ThermometerEvidence thermometer;
  PeriodLoss as_read;  ///< worst periods
  PeriodLoss corrected;
  PeriodLoss steady_as_read;  ///< the same without slips of the pen
  PeriodLoss steady_corrected;
  PeriodLoss most_as_read;  ///< worst periods, each raised to the test's pressure
  PeriodLoss most_corrected;
  AirBalance balance;
  std::optional<DecayFit> fit;
  ReadingNoise noise;
  double fitted_noise = 0;  ///< of one reading about one steady leak
  double factor = 0;        ///< Student's, times root two for a difference of two readings
  double per_degf = 0;      ///< how far a degree moves the gauge, without sign
  double start_differential_pa = 0;
  std::vector<OddReading> odd;

  /// True where the thermometer moved, so that the air's temperature can be taken out.
  bool sees_temperature() const { return thermometer.sight == ThermometerSight::moves; }
  double duration_s() const { return log.log.duration_s(); }
};

/// Nothing where the readings lie off the gauge. `plan` must outlive the result.
std::optional<LeakEvidence> gather_evidence(const LeakTestPlan& plan, const LeakLog& rows);

/// How many pascals one unit of the gauge is at the test pressure.
double pascals_per_unit(const LeakTestPlan& plan);

double longest_gap_in_s(const LeakLog& log);

}  // namespace linewright
