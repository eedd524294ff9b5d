#pragma once
// A line unrolled at full size, to tape along the tube.

#include <string>
#include <vector>

#include "planning/strip_marks.hpp"
#include "render/draw/pages.hpp"

namespace linewright {

/// The line's supports, holes, bends and sleeves at their distance from its first node, in rows
/// that are cut out and joined where they overlap.
std::string true_strip(const Drawing& drawing, const SceneRoute& route,
                       const std::vector<StripMark>& marks, const Paper& paper);

}  // namespace linewright
