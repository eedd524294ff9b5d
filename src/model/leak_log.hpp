#pragma once
// What was read off a gauge while a sealed system stood.

#include <vector>

namespace linewright {

struct LogRow {
  double time_s = 0;
  double reading = 0;           ///< feet or knots
  double temperature_degf = 0;  ///< only where the log has temperatures
  int line = 0;                 ///< in the file, counted from one
};

/// A log of two or more rows whose times rise.
struct LeakLog {
  std::vector<LogRow> rows;
  bool has_temperature = false;
  /// One unit in the last place that was written, in any row: what rounding may hide.
  double reading_step = 1;
  double temperature_step_degf = 1;

  double duration_s() const { return rows.back().time_s - rows.front().time_s; }
};

}  // namespace linewright
