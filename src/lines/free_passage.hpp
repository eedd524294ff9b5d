#pragma once
// Where a cable goes through a fairlead that is to leave it free.

#include "geometry/centreline.hpp"
#include "model/drawn_plane.hpp"
#include "model/network.hpp"

namespace linewright {

/// Inches. Where the fairlead stands in a hole its bore is square to the sheet, and the place is
/// where the cable passes the fairlead's middle as seen along the sheet; elsewhere the bore runs
/// along the cable.
struct FreePassage {
  const FreeFairlead* free = nullptr;
  double distance_in = 0;   ///< along the route
  double offset_in = 0;     ///< of the cable's middle from that of the bore
  double slant_cosine = 1;  ///< of the cable to the bore
  const RoutePoint& fairlead() const { return free->fairlead; }
};

/// On the leg of the route that the fairlead is written in. `sheet` is the plane of the sheet in
/// whose hole the fairlead stands; nullptr for none. `free` must outlive the result.
FreePassage free_passage(const Centreline& centreline, const FreeFairlead& free,
                         const DrawnPlane* sheet);

}  // namespace linewright
