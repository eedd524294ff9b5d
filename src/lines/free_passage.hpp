#pragma once
// Where a cable goes through a fairlead that is to leave it free.

#include "geometry/centreline.hpp"
#include "model/network.hpp"

namespace linewright {

/// Inches. Where the fairlead stands in a frame's hole its bore runs fore and aft, and the place is
/// where the cable passes its station; elsewhere the bore runs along the cable.
struct FreePassage {
  const FreeFairlead* free = nullptr;
  double distance_in = 0;   ///< along the route
  double offset_in = 0;     ///< of the cable's middle from that of the bore
  double slant_cosine = 1;  ///< of the cable to the bore
  const RoutePoint& fairlead() const { return free->fairlead; }
};

/// On the leg of the route that the fairlead is written in. `free` must outlive the result.
FreePassage free_passage(const Centreline& centreline, const FreeFairlead& free);

}  // namespace linewright
