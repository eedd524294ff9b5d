#pragma once
// What the wire of a push-pull control sweeps beyond the ends of its casing.

#include <vector>

#include "lines/casing_ends.hpp"
#include "lines/near/stretch.hpp"

namespace linewright {

/// The wire beyond each end, as thick as the casing: straight on from it and pushed all the way
/// out, or at every place of its way on the arm that its pin goes round on, with what lies between
/// those places as play (`Reach::likely`). Two stretches of each end, what lies within
/// `at_support_in` of the casing and what lies beyond. All of a stretch lies at the end's own
/// distance along the route. None for lines that are no casings, and none where the travel or the
/// run-out is not stated.
std::vector<Stretch> casing_wires(const PreparedRoute& route);

}  // namespace linewright
