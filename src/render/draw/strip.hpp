#pragma once
// One line unrolled along its developed length.

#include <string>
#include <vector>

#include "planning/strip_marks.hpp"
#include "render/draw/sheet.hpp"

namespace linewright {

/// Supports, crossings and bends of the line at their distance, how far it can move, gaps with
/// their limits, and findings. `route` is one of the drawing's scene.
std::string strip_view(const Drawing& drawing, const SceneRoute& route,
                       const std::vector<StripMark>& marks);

}  // namespace linewright
