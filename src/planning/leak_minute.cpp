#include "planning/leak_minute.hpp"

#include <algorithm>
#include <cmath>

#include "physics/atmosphere.hpp"

namespace linewright {

namespace {

/// Times nearer than this are the same: the difference is rounding.
constexpr double same_time_s = 1e-9;

struct State {
  double reading = 0;
  double pressure_pa = 0;
  double temperature_degf = 0;
};

double interpolated(double a, double b, double part) {
  return a + (b - a) * part;
}

double pressure_between_pa(const PressureLog& log, std::size_t row, double part) {
  const double before_pa = log.gauge.differential_pa(log.pressure_pa[row]);
  const double after_pa = log.gauge.differential_pa(log.pressure_pa[row + 1]);
  const double differential_pa = before_pa > 0 && after_pa > 0
                                     ? before_pa * std::pow(after_pa / before_pa, part)
                                     : interpolated(before_pa, after_pa, part);
  return log.gauge.pressure_at_differential_pa(differential_pa);
}

std::optional<State> state_at(const PressureLog& log, double time_s) {
  const std::vector<LogRow>& rows = log.log.rows;
  const auto after =
      std::lower_bound(rows.begin(), rows.end(), time_s - same_time_s,
                       [](const LogRow& row, double wanted_s) { return row.time_s < wanted_s; });
  if (after == rows.end()) return std::nullopt;
  const auto index = static_cast<std::size_t>(after - rows.begin());
  if (after->time_s <= time_s + same_time_s)
    return State{after->reading, log.pressure_pa[index], after->temperature_degf};
  if (index == 0) return std::nullopt;
  const LogRow& before = rows[index - 1];
  const double part = (time_s - before.time_s) / (after->time_s - before.time_s);
  State state;
  state.pressure_pa = pressure_between_pa(log, index - 1, part);
  state.temperature_degf = interpolated(before.temperature_degf, after->temperature_degf, part);
  const auto reading = log.gauge.reading(state.pressure_pa);
  if (!reading) return std::nullopt;
  state.reading = *reading;
  return state;
}

double median_of(double a, double b, double c) {
  return std::max(std::min(a, b), std::min(std::max(a, b), c));
}

/// The line through the readings of two rows, at a time outside them.
double carried_on(const LogRow& near, const LogRow& far, double time_s) {
  return interpolated(near.reading, far.reading,
                      (time_s - near.time_s) / (far.time_s - near.time_s));
}

}  // namespace

std::optional<PressureLog> pressure_log(const LeakGauge& gauge, const LeakLog& log) {
  PressureLog result{gauge, log, {}};
  for (const LogRow& row : log.rows) {
    const auto pressure_pa = gauge.pressure_pa(row.reading);
    if (!pressure_pa) return std::nullopt;
    result.pressure_pa.push_back(*pressure_pa);
  }
  return result;
}

LeakLog from_time(LeakLog log, double start_s) {
  std::erase_if(log.rows, [start_s](const LogRow& row) { return row.time_s < start_s - 1e-9; });
  return log;
}

LeakLog without_slips(const LeakLog& log) {
  const std::vector<LogRow>& rows = log.rows;
  const std::size_t count = rows.size();
  if (count < 3) return log;
  LeakLog smooth = log;
  for (std::size_t i = 1; i + 1 < count; ++i)
    smooth.rows[i].reading = median_of(rows[i - 1].reading, rows[i].reading, rows[i + 1].reading);
  // An end has one neighbour; where the curve before it points is the other.
  const auto mend_end = [&](std::size_t end, std::size_t near, std::size_t far) {
    const double outside_s = 2 * rows[end].time_s - rows[near].time_s;
    const double expected = carried_on(smooth.rows[near], smooth.rows[far], outside_s);
    smooth.rows[end].reading = median_of(rows[end].reading, smooth.rows[near].reading, expected);
  };
  if (count > 3) {
    mend_end(0, 1, 2);
    mend_end(count - 1, count - 2, count - 3);
  }
  return smooth;
}

std::optional<PeriodLoss> loss_between(const PressureLog& log, double start_s, double end_s) {
  const auto start = state_at(log, start_s);
  const auto end = state_at(log, end_s);
  if (!start || !end) return std::nullopt;
  PeriodLoss loss;
  loss.start_s = start_s;
  loss.end_s = end_s;
  loss.loss = start->reading - end->reading;
  loss.start_differential_pa = log.gauge.differential_pa(start->pressure_pa);
  loss.corrected = loss.loss;
  double steady_end_pa = end->pressure_pa;
  if (log.log.has_temperature) {
    loss.warming_degf = end->temperature_degf - start->temperature_degf;
    steady_end_pa *=
        kelvins_from_degf(start->temperature_degf) / kelvins_from_degf(end->temperature_degf);
    const auto steady_end = log.gauge.reading(steady_end_pa);
    if (!steady_end) return std::nullopt;
    loss.corrected = start->reading - *steady_end;
  }
  loss.corrected_pa = loss.start_differential_pa - log.gauge.differential_pa(steady_end_pa);
  return loss;
}

double raised_to(double full_differential_pa, const PeriodLoss& loss) {
  if (loss.start_differential_pa <= 0) return 1;
  return std::max(1.0, full_differential_pa / loss.start_differential_pa);
}

std::optional<PeriodLoss> worst_period_at(const PressureLog& log, double period_s, LossKind kind,
                                          double full_differential_pa) {
  const std::vector<LogRow>& rows = log.log.rows;
  const double first_s = rows.front().time_s;
  const double last_s = rows.back().time_s;
  if (last_s - first_s <= period_s + same_time_s) return loss_between(log, first_s, last_s);
  const auto value = [&](const PeriodLoss& loss) {
    return (kind == LossKind::as_read ? loss.loss : loss.corrected) *
           raised_to(full_differential_pa, loss);
  };
  // The loss runs on between readings, so that the worst stretch starts or ends at one.
  std::optional<PeriodLoss> worst;
  const auto offer = [&](double start_s) {
    const double from_s = std::clamp(start_s, first_s, last_s - period_s);
    const auto loss = loss_between(log, from_s, from_s + period_s);
    if (loss && (!worst || value(*loss) > value(*worst))) worst = loss;
  };
  for (const LogRow& row : rows) {
    offer(row.time_s);
    offer(row.time_s - period_s);
  }
  return worst;
}

std::optional<PeriodLoss> worst_period(const PressureLog& log, double period_s, LossKind kind) {
  return worst_period_at(log, period_s, kind, 0);
}

}  // namespace linewright
