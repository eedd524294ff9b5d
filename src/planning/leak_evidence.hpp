#pragma once
// What a log of a leak test shows, and how far each figure can be trusted.

#include <optional>

#include "model/leak_log.hpp"
#include "planning/leak_fit.hpp"
#include "planning/leak_minute.hpp"
#include "planning/leak_noise.hpp"
#include "planning/leak_test_plan.hpp"

namespace linewright {

/// What is taken for granted where the log does not say [common practice, no source].
inline constexpr double assumed_reading_error_ft = 5;  ///< standard deviation, short logs
inline constexpr double assumed_reading_error_kt = 0.5;
inline constexpr double unseen_drift_to_pass_degf = 1;  ///< in a minute
inline constexpr double unseen_drift_to_fail_degf = 0.5;
inline constexpr double share_not_followed = 0.25;        ///< of a temperature correction
inline constexpr double most_correction_degf = 2;         ///< in a minute
inline constexpr double least_telling_change_degf = 0.5;  ///< less may be the thermometer's noise
inline constexpr double least_start_share = 0.9;          ///< of the test's pressure
inline constexpr double longest_gap_s = 90;               ///< between two readings

/// Everything the verdict rests on, worked out once. Losses are in the gauge's unit.
struct LeakEvidence {
  const LeakTestPlan* plan = nullptr;
  PressureLog log;
  bool logged = false;       ///< temperatures
  bool full_minute = false;  ///< the log covers the limit's period
  PeriodLoss as_read;        ///< worst periods
  PeriodLoss corrected;
  PeriodLoss steady_as_read;  ///< the same without slips of the pen
  PeriodLoss steady_corrected;
  std::optional<DecayFit> fit;
  ReadingNoise noise;
  double fitted_noise = 0;  ///< of one reading about the fitted curve
  double factor = 0;        ///< Student's, times root two for a difference of two readings
  double per_degf = 0;      ///< how far a degree moves the gauge, without sign
  double start_differential_pa = 0;
};

/// Nothing where the readings lie off the gauge. `plan` must outlive the result.
std::optional<LeakEvidence> gather_evidence(const LeakTestPlan& plan, const LeakLog& rows);

/// Doubt about the loss between two readings: from all strays and the misfit of the curve, as
/// before a pass, and from noise alone, as before a fail.
double doubt_to_pass(const LeakEvidence& evidence);
double doubt_to_fail(const LeakEvidence& evidence);

/// The most that may have been lost, all doubts added. A test that started below its target lost
/// too little, and its loss is raised in proportion.
double highest_loss(const LeakEvidence& evidence);

/// The least that was surely lost, all doubts taken off, by the log as it stands and without slips.
/// A test that started beyond its target lost too much, and its loss is lowered in proportion.
double lowest_loss(const LeakEvidence& evidence, LossKind kind);

/// True where a change of temperature was logged that the readings themselves gainsay.
bool temperature_contradicted(const LeakEvidence& evidence);

/// How far the readings, slips left out and temperature removed, move away from rest at any time.
double largest_rise(const LeakEvidence& evidence);
/// How much of that noise, thermometer and a little drift explain.
double rise_allowed(const LeakEvidence& evidence);

double longest_gap_in_s(const LeakLog& log);

}  // namespace linewright
