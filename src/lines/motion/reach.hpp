#pragma once
// The free-play envelope of each span of a route, from its line's surplus length, the temperature
// range, its own weight under the load factor and, for cables, the tension: the least of the
// temperature range, and where another cable works the same control, what is left while that one
// carries its limit load. A cable slides in its guides, so that what it has over between its ends
// can gather in any one span: that is its bound; what is likely is the span's share by length.

#include <optional>
#include <string>
#include <vector>

#include "lines/free_run.hpp"
#include "lines/motion/cable_state.hpp"
#include "lines/near/stretch.hpp"
#include "physics/cable.hpp"

namespace linewright {

/// A span with its envelope, or with what is missing to work it out.
struct SpanReach {
  Stretch stretch;
  bool ends_free = false;  ///< one end or both is held by nothing
  std::string missing;     ///< empty when the envelope is known
  /// False where the missing thing leaves the hang of a cable unknown, and not only how far its end
  /// swings. The envelope then holds what is known.
  bool hang_known = true;
  /// The power of the length by which the sag grows at least: a beam's, a string's, or that of a
  /// cable so slack that only its stretch carries it.
  int sag_power = 4;
  /// Cables: the sag and bow while no load is on the control; nothing where not known.
  std::optional<double> sag_unloaded_in;
};

/// One entry for each of the route's spans, in order. `drawn` is the whole route, `runs` are the
/// project's free runs, `state` that of the route where it is a cable.
std::vector<SpanReach> span_reaches(const PreparedProject& prepared, const Stretch& drawn,
                                    const std::vector<FreeRun>& runs, const CableState& state);

/// The line as it hangs, from the reaches of its spans: stretches that cover it end to end: a
/// cable's spans with their reach, `Reach::likely`. Other lines are one stretch that does not move.
/// Of a span whose hang is not known there is what is known of it, and whoever measures by it must
/// say what is missing. The swing of an end whose arm cannot give the travel is left out. To them
/// is added what an end sweeps beyond its drawn place (end_sweep.hpp).
std::vector<Stretch> hanging_stretches(const Stretch& drawn, const std::vector<SpanReach>& reaches);

}  // namespace linewright
