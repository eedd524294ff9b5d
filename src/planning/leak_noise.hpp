#pragma once
// How far what was read can be trusted: scatter, rounding, and whether it moved beyond both.

#include <vector>

#include "model/leak_log.hpp"

namespace linewright {

/// One column of a log against time.
struct LogSeries {
  std::vector<double> time_s;
  std::vector<double> value;
  double step = 1;  ///< the coarsest that all values are whole multiples of
};

/// Readings, in steps of up to the 20 ft of an altimeter's scale; temperatures, in steps of up to
/// 2 degF. A step is never taken finer than the last place written.
LogSeries reading_series(const LeakLog& log);
LogSeries temperature_series(const LeakLog& log);

/// How far one value strays from its neighbours, standard deviations in the series' unit.
struct ReadingNoise {
  double typical = 0;  ///< from the middle of the deviations: slips have no say
  double overall = 0;  ///< from their squares: slips count in full
};

/// From each value's distance to the line between its neighbours; never less than what rounding
/// hides. Series of fewer than five values cannot tell: they get `assumed`, or more where they are
/// rounded more coarsely.
ReadingNoise series_noise(const LogSeries& series, double assumed);

/// How far a series moved: the most by which the means of its first, middle and last third of the
/// time differ, and the standard error that scatter gives such a difference.
struct SeriesMove {
  double moved = 0;
  double error = 0;
};
SeriesMove series_move(const LogSeries& series, double noise);
/// The same from the middle third to the last.
SeriesMove late_move(const LogSeries& series, double noise);

/// True where the move is beyond scatter: five standard errors, more for short series, whose noise
/// is itself uncertain.
bool is_beyond_scatter(const SeriesMove& move, std::size_t values);

/// Twice the square term of the parabola fitted to a series: by how much its slope changes in a
/// second. Zero for fewer than four values.
double slope_change_per_s(const LogSeries& series);

}  // namespace linewright
