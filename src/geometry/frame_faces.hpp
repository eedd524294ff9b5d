#pragma once
// Where a frame's face begins: at the bare hole, or where the guard round the hole ends.

#include <vector>

#include "geometry/polygon.hpp"
#include "model/structure.hpp"

namespace linewright {

/// The frame's holes as the face sees them, one polygon each, in order. A guarded hole is grown by
/// `trim_lip_in` where that keeps it inside the outline and apart from all the others.
std::vector<std::vector<Vec2>> face_holes(const Frame& frame);

}  // namespace linewright
