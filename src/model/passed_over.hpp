#pragma once
// What was left out of the judgement of gaps near the ends of a line, and why.

#include <string>

#include "model/vector.hpp"

namespace linewright {

/// The nearest place of what is passed over, of one part or one other line near one end.
struct PassedOver {
  std::string route;
  std::string with;        ///< the part or the other route
  Vec3 at;                 ///< on the route's centreline
  double distance_in = 0;  ///< along the route
  double gap_in = 0;       ///< between the surfaces as drawn; negative: they overlap
  std::string reason;      ///< one sentence
};

}  // namespace linewright
