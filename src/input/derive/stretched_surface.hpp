#pragma once
// Places on a panel that is stretched over frames.

#include <string>

#include "input/derive/derivation.hpp"
#include "input/derive/part_surface.hpp"

namespace linewright {

/// The faces of the bay that has the place, where two coordinates are stated: of a bay that is not
/// flat the plane that touches it there, evenly warped. Or why there are none; empty words where
/// what is wrong with the panel or its frames is said when they are read.
Expected<PartSurface, std::string> stretched_surface(const ProjectItem& panel, const OnPart& where,
                                                     Derivation& derivation);

}  // namespace linewright
