#pragma once
// What a gauge lost in a period, read off a log, as it stands and with temperature taken out.

#include <optional>
#include <vector>

#include "model/leak_log.hpp"
#include "planning/leak_gauge.hpp"

namespace linewright {

/// A log with the pressures that belong to its readings.
struct PressureLog {
  LeakGauge gauge;
  LeakLog log;
  std::vector<double> pressure_pa;  ///< in the order of the rows
};

/// Nothing where a reading lies off the gauge.
std::optional<PressureLog> pressure_log(const LeakGauge& gauge, const LeakLog& log);

/// The rows from a time on.
LeakLog from_time(LeakLog log, double start_s);

/// The same log with every reading replaced by the middle one of itself and its neighbours, so that
/// a single slip of the pen has no say. A steady fall stays as it is. Logs of fewer than three rows
/// come back unchanged.
LeakLog without_slips(const LeakLog& log);

/// The loss over a stretch of the log. Positive is toward rest.
struct PeriodLoss {
  double start_s = 0;
  double end_s = 0;
  double loss = 0;  ///< in the gauge's unit
  /// The loss, had the temperature stayed as it was at the start: the pressure of a sealed gas goes
  /// with its absolute temperature. Equal to `loss` where the log has no temperatures.
  double corrected = 0;
  double corrected_pa = 0;  ///< the same as a pressure
  double warming_degf = 0;
  double start_differential_pa = 0;
};

/// Between readings the pressure is taken to run along an exponential toward ambient, the
/// temperature along a straight line. Nothing for a stretch that is not inside the log, or that
/// leaves the gauge.
std::optional<PeriodLoss> loss_between(const PressureLog& log, double start_s, double end_s);

enum class LossKind { as_read, corrected };

/// The stretch of `period_s` that lost most, wherever in the log it starts; the whole log where it
/// is shorter.
std::optional<PeriodLoss> worst_period(const PressureLog& log, double period_s, LossKind kind);

/// The same with every stretch's loss raised in proportion where it started at less than
/// `full_differential_pa`: a smaller pressure drives a smaller leak. The loss returned is as it
/// was.
std::optional<PeriodLoss> worst_period_at(const PressureLog& log, double period_s, LossKind kind,
                                          double full_differential_pa);

/// The factor by which such a loss is raised, at least one.
double raised_to(double full_differential_pa, const PeriodLoss& loss);

}  // namespace linewright
