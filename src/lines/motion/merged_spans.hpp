#pragma once
// Two spans of a limp line as one, once nothing holds it between them any more.

#include "geometry/envelope.hpp"
#include "lines/prepared.hpp"

namespace linewright {

/// From the support before the lost one to the one after it: what both spans had over is over in
/// the one, and its ellipsoid stands on the straight between its ends.
ReachEnvelope merged_envelope(const PreparedRoute& route, const ReachEnvelope& before,
                              const ReachEnvelope& after);

}  // namespace linewright
