#pragma once
// The picture in space as a binary glTF file, for programs that show or place models.

#include <string>

#include "planning/scene.hpp"
#include "render/report.hpp"

namespace linewright {

/// A .glb (Khronos glTF 2.0, binary container): in metres, Y up and the nose along +Z, as the
/// format wants. Parts and lines are nodes under their names; a line has the material of the worst
/// that was judged of it, and its system, verdict and findings as extras; its supports are its
/// children. Structure that is a thin sheet is drawn as its middle.
std::string scene_glb(const Scene& scene, const Report& report);

}  // namespace linewright
