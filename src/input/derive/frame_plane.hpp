#pragma once
// The plane that a frame's web lies in, as its map says.

#include <optional>

#include "input/derive/mirrored.hpp"
#include "input/quantity.hpp"
#include "input/yaml_document.hpp"
#include "model/drawn_plane.hpp"

namespace linewright {

/// Nothing where the map does not say, or not in a way that can be read.
std::optional<DrawnPlane> frame_plane(const YamlNode& frame, BareLength bare);

/// Nearer to BL 0 than this is on it.
inline constexpr double on_middle_in = 1e-6;

/// Which coordinate of the plane is BL; neither where the plane is not its own mirror image.
PlaneSide plane_side(const DrawnPlane& plane);

}  // namespace linewright
