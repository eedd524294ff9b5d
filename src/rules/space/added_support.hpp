#pragma once
// Where one more support would keep a span off a part.

#include <optional>

#include "lines/motion/reach.hpp"
#include "lines/near/nearest_structure.hpp"

namespace linewright {

/// Places along the route, inches.
struct SupportPlaces {
  double first_in = 0;
  double last_in = 0;
};

/// The places, an inch or more from both ends of the span, at which one more support (a clamp, or a
/// fairlead for a cable) keeps all of the span out of reach of what counts of a part, its build
/// tolerance counted. Nothing where one support cannot, and in a span so long that it wants
/// several. The span's envelope must be known.
std::optional<SupportPlaces> places_that_keep_off(const SpanReach& reach,
                                                  const Obstacles& obstacles, int part,
                                                  double tolerance_in, const Counts& counts);

}  // namespace linewright
