#pragma once
// What is taken for what a project leaves out, where a verdict may rest on it.

#include <string>
#include <vector>

#include "model/project.hpp"

namespace linewright {

/// A sentence for each kind of thing that the project does not state, with the parts that lack it:
/// what was taken for it, or what was not judged. The loader says what it takes itself, of units,
/// temperatures, load factors, attitudes, edges, thicknesses and meshes; this is the rest. What a
/// rule answers `unknown` for is not here.
std::vector<std::string> taken_values(const Project& project);

}  // namespace linewright
