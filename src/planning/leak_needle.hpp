#pragma once
// Whether the needle told what the pressure did: does it move at all, and which readings stand out.

#include <vector>

#include "model/leak_log.hpp"
#include "planning/leak_noise.hpp"

namespace linewright {

/// A reading that stands out from its neighbours.
struct OddReading {
  LogRow row;           ///< as logged, with its line
  double expected = 0;  ///< by the readings around it
  /// False for a single slip of the pen; true where the needle jumped and went on from there, as
  /// one that sticks and comes free does.
  bool jumps = false;

  double by() const { return row.reading - expected; }
};

/// The readings that stand out most, at most three, in order of time. `least` is how far, in the
/// gauge's unit, a reading has to stand out at least.
std::vector<OddReading> odd_readings(const LeakLog& log, const ReadingNoise& noise, double least);

/// True where the needle moved beyond scatter, rounding and `least`, and went on moving from the
/// middle of the log to its end. One that did not may be stuck, or shut off from the system.
bool needle_moved(const LeakLog& log, const ReadingNoise& noise, double least);

/// True where all readings are the same.
bool needle_stands(const LeakLog& log);

}  // namespace linewright
