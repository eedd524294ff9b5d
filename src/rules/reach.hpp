#pragma once
// The free-play envelope of each span of a route, from its line's surplus length, the temperature
// range, its own weight under the load factor and, for cables, the tension.

#include <string>
#include <vector>

#include "geometry/free_run.hpp"
#include "geometry/nearest_approach.hpp"

namespace linewright {

/// Expansion of the aluminium airframe per degree Fahrenheit [verified: engineering tables, linear
/// expansion of metals: 2024 12.7e-6, 6061 13.1e-6].
inline constexpr double airframe_expansion_per_degf = 12.8e-6;

/// A span with its envelope, or with what is missing to work it out.
struct SpanReach {
  Stretch stretch;
  bool ends_free = false;  ///< one end or both is held by nothing
  std::string missing;     ///< empty when the envelope is known
};

/// One entry for each of the route's spans, in order. `runs` are the project's free runs.
std::vector<SpanReach> span_reaches(const PreparedProject& prepared, const PreparedRoute& route,
                                    const std::vector<FreeRun>& runs);

/// The lowest tension of a cable over the temperature range in a rigid aluminium airframe:
/// T = T_rigged − (α_airframe − α_cable) · AE · (rigged − coldest). Below zero: slack by −T.
double coldest_tension_lbf(double rigged_lbf, const Line& line, const TemperatureRange& range);

}  // namespace linewright
