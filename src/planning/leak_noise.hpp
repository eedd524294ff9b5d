#pragma once

#include "model/leak_log.hpp"

namespace linewright {

/// How far one reading strays from its neighbours, standard deviations in the log's unit.
struct ReadingNoise {
  double typical = 0;  ///< from the middle of the deviations: slips have no say
  double overall = 0;  ///< from their squares: slips count in full
};

/// From each reading's distance to the line between its neighbours; never less than what rounding
/// hides. Logs of fewer than five readings cannot tell: they get `assumed`, or more where they are
/// rounded more coarsely.
ReadingNoise reading_noise(const LeakLog& log, double assumed);

/// The coarsest step that all readings of a log are whole multiples of, up to the 20 ft of an
/// altimeter's scale, but at least the last place written.
double coarsest_step(const LeakLog& log);

}  // namespace linewright
