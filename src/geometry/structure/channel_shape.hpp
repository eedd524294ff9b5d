#pragma once
// A channel taken apart into flat walls and free edges.

#include <array>
#include <vector>

#include "geometry/distance.hpp"
#include "model/structure.hpp"

namespace linewright {

/// Part of one wall on one leg of the path, flat and convex.
struct ChannelWall {
  std::array<Vec3, 4> corners;  ///< in order round it
  bool trimmed = false;         ///< trim on an edge of the channel reaches over all of it
};

struct ChannelShape {
  std::vector<ChannelWall> walls;
  std::vector<Segment3> edges;  ///< the two long ones, leg by leg, then the two cut ends
};

/// The middle of the sheet. Where the edge is guarded, what lies within `trim_lip_in` of a free
/// edge is a piece of its own. Nothing for a channel without a path or a section.
ChannelShape channel_shape(const Channel& channel);

}  // namespace linewright
