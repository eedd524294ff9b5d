#pragma once
// What the lines' supports leave them free to do, worked out once for all that ask.

#include <vector>

#include "lines/motion/reach.hpp"
#include "lines/motion/sleeve_hold.hpp"
#include "lines/rod_way.hpp"
#include "lines/tied_lines.hpp"

namespace linewright {

/// `prepared` of `motion_of` must outlive it. Routes are in the project's order.
struct LineMotion {
  std::vector<FreeRun> runs;
  std::vector<CableState> cables;               ///< of each route; empty states of other lines
  std::vector<SleeveGuards> sleeves;            ///< of each route
  std::vector<Stretch> drawn;                   ///< each route as drawn, end to end, without reach
  std::vector<std::vector<SpanReach>> reaches;  ///< of each route's spans; of a rod one entry
  std::vector<std::vector<Stretch>> hanging;    ///< each route as it hangs, or sweeps
  std::vector<RodWay> rods;                     ///< of each route; empty ways of what is no rod
  TiedLines ties;                               ///< which lines are tied to each other, and where
  /// Of each fitting: how far it swings, likely, with the lines that it hangs on; 0 of a held one.
  std::vector<double> fitting_swings_in;
};

/// On all of the machine's threads, with the same result as on one.
LineMotion motion_of(const PreparedProject& prepared);

}  // namespace linewright
