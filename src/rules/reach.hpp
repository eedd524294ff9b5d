#pragma once
// The free-play envelope of each span of a route, from its line's surplus length, the temperature
// range, its own weight under the load factor and, for cables, the tension.

#include <string>
#include <vector>

#include "geometry/free_run.hpp"
#include "geometry/nearest_approach.hpp"
#include "physics/cable.hpp"

namespace linewright {

/// A span with its envelope, or with what is missing to work it out.
struct SpanReach {
  Stretch stretch;
  bool ends_free = false;  ///< one end or both is held by nothing
  std::string missing;     ///< empty when the envelope is known
  /// The power of the length by which the sag grows at least: a beam's, a string's, or that of a
  /// cable so slack that only its stretch carries it.
  int sag_power = 4;
};

/// One entry for each of the route's spans, in order. `runs` are the project's free runs.
std::vector<SpanReach> span_reaches(const PreparedProject& prepared, const PreparedRoute& route,
                                    const std::vector<FreeRun>& runs);

/// The lowest tension of a cable over the temperature range in a rigid aluminium airframe. Below
/// zero: slack by −T. The rigged tension where the line's stiffness or expansion is not known.
double coldest_tension_lbf(double rigged_lbf, const Line& line, const TemperatureRange& range);

}  // namespace linewright
