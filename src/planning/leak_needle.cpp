#include "planning/leak_needle.hpp"

#include <algorithm>
#include <cmath>

namespace linewright {

namespace {

constexpr std::size_t fewest_rows = 5;
constexpr std::size_t most_odd = 3;
/// A change between two readings against those before and after it strays by 2.2 standard
/// deviations of one reading; six of those are no scatter.
constexpr double deviations_that_stand_out = 6 * 2.2;

/// Of a move late in the log, that has moved before: once in a hundred by chance.
constexpr double late_deviations = 2.6;

using Rows = std::vector<LogRow>;

double slope(const Rows& rows, std::size_t i) {
  return (rows[i + 1].reading - rows[i].reading) / (rows[i + 1].time_s - rows[i].time_s);
}

/// The slope that the neighbours of an interval give it; at an end, carried on from the next two.
double slope_around(const Rows& rows, std::size_t i) {
  const std::size_t last = rows.size() - 2;
  if (i == 0) return 2 * slope(rows, 1) - slope(rows, 2);
  if (i == last) return 2 * slope(rows, last - 1) - slope(rows, last - 2);
  return (slope(rows, i - 1) + slope(rows, i + 1)) / 2;
}

/// By how much the reading after an interval is off what the intervals around it give.
double jump_over(const Rows& rows, std::size_t i) {
  return (slope(rows, i) - slope_around(rows, i)) * (rows[i + 1].time_s - rows[i].time_s);
}

double line_between(const LogRow& a, const LogRow& b, double time_s) {
  return a.reading + (b.reading - a.reading) * (time_s - a.time_s) / (b.time_s - a.time_s);
}

/// A reading that its neighbours on both sides disown, by more than `least`.
bool is_slip(const Rows& rows, std::size_t i, double least) {
  if (i == 0 || i + 1 == rows.size()) return false;
  const double before = rows[i].reading - rows[i - 1].reading;
  const double after = rows[i + 1].reading - rows[i].reading;
  return before * after < 0 && std::min(std::abs(before), std::abs(after)) > least / 2;
}

OddReading slip_at(const Rows& rows, std::size_t i) {
  return {rows[i], line_between(rows[i - 1], rows[i + 1], rows[i].time_s), false};
}

OddReading jump_before(const Rows& rows, std::size_t i) {
  return {rows[i], rows[i].reading - jump_over(rows, i - 1), true};
}

struct Candidate {
  std::size_t interval = 0;
  double size = 0;
};

}  // namespace

std::vector<OddReading> odd_readings(const LeakLog& log, const ReadingNoise& noise, double least) {
  const Rows& rows = log.rows;
  std::vector<OddReading> odd;
  if (rows.size() < fewest_rows) return odd;
  const double bound =
      std::max({least, 2 * reading_series(log).step, deviations_that_stand_out * noise.typical});
  std::vector<Candidate> candidates;
  for (std::size_t i = 0; i + 1 < rows.size(); ++i) {
    // Carried on to an end, scatter doubles.
    const bool at_end = i == 0 || i + 2 == rows.size();
    const double size = std::abs(jump_over(rows, i)) / (at_end ? 2 : 1);
    if (size > bound) candidates.push_back({i, size});
  }
  std::stable_sort(candidates.begin(), candidates.end(),
                   [](const Candidate& a, const Candidate& b) { return a.size > b.size; });
  std::vector<std::size_t> taken;
  for (const Candidate& candidate : candidates) {
    const std::size_t i = candidate.interval;
    const auto near = [i](std::size_t other) { return (i > other ? i - other : other - i) <= 2; };
    if (taken.size() == most_odd || std::any_of(taken.begin(), taken.end(), near)) continue;
    taken.push_back(i);
    if (is_slip(rows, i, bound))
      odd.push_back(slip_at(rows, i));
    else if (is_slip(rows, i + 1, bound))
      odd.push_back(slip_at(rows, i + 1));
    else
      odd.push_back(jump_before(rows, i + 1));
  }
  std::sort(odd.begin(), odd.end(),
            [](const OddReading& a, const OddReading& b) { return a.row.time_s < b.row.time_s; });
  return odd;
}

bool needle_moved(const LeakLog& log, const ReadingNoise& noise, double least) {
  const LogSeries series = reading_series(log);
  const SeriesMove move = series_move(series, noise.overall);
  const SeriesMove late = late_move(series, noise.overall);
  return move.moved >= std::max(least, 0.5 * series.step) &&
         is_beyond_scatter(move, series.value.size()) && late.moved > late_deviations * late.error;
}

bool needle_stands(const LeakLog& log) {
  return std::all_of(log.rows.begin(), log.rows.end(),
                     [&](const LogRow& row) { return row.reading == log.rows.front().reading; });
}

}  // namespace linewright
