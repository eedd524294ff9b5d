#pragma once
// A frame's face: the web less its holes, or less the guards round them.

#include <array>
#include <vector>

#include "geometry/plane/polygon.hpp"
#include "model/structure.hpp"

namespace linewright {

/// The frame's holes as the face sees them, one polygon each, in order. A guarded hole is grown by
/// `trim_lip_in` where that keeps it inside the outline and apart from all the others, grown or
/// not.
std::vector<std::vector<Vec2>> face_holes(const Frame& frame);

/// Triangles that tile the web outside `face_holes`. Where holes overlap or leave the outline, so
/// that no tiling is sound, the whole web without its holes: a gap may be understated, never
/// overstated.
std::vector<std::array<Vec2, 3>> face_triangles(const Frame& frame);

}  // namespace linewright
