#pragma once
// What keeps a sleeve in its place on a line.

#include <optional>
#include <string>
#include <vector>

#include "rules/cable_run.hpp"

namespace linewright {

struct SleeveHold {
  bool is_held = true;
  std::optional<Movement> moves;  ///< all the same; nothing where the cable's travel is not known
  std::string words;              ///< "the clamp on S3L holds it"; empty where nothing does
};

/// Held by a clamp, or a grommet or bushing that fits it closely, within its length: then it stays.
/// Held by attachments that it cannot slip over, no farther than `farthest_stop_in` from each end,
/// or by nothing: then it goes with the cable. On a line that does not move it stays.
SleeveHold sleeve_hold(const PreparedRoute& route, const Sleeve& sleeve,
                       const std::vector<Passage>& on_the_way, double farthest_stop_in);

}  // namespace linewright
