#pragma once
// What a pushrod sweeps through its whole travel.

#include "lines/motion/reach.hpp"
#include "lines/rod_way.hpp"

namespace linewright {

/// The rod at every place of its way as one stretch, with an envelope that takes in all that lies
/// between those places, and the rod's own sag between its two ends under the load factor, as a
/// beam with pinned ends. Distances along it are those along the rod. Where its way is not known it
/// is the rod as drawn, and `missing` says why.
SpanReach rod_reach(const PreparedProject& prepared, const PreparedRoute& route, const RodWay& way);

}  // namespace linewright
