#pragma once
// A frame at full size, to prick its holes through.

#include <string>

#include "model/structure.hpp"
#include "render/draw/pages.hpp"

namespace linewright {

/// The frame as it is drawn in the project, over as many pages as it takes. Pages that nothing of
/// it lies on are left out.
std::string true_frame(const Drawing& drawing, const Frame& frame, const Paper& paper);

}  // namespace linewright
