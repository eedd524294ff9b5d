#pragma once
// What was measured and is drawn somewhere else.

#include <string>
#include <vector>

#include "model/project.hpp"

namespace linewright {

/// A question for each place that was measured farther from where it is drawn than the build
/// tolerance lets it be: the drawing may have changed since, or the line is to be moved. `project`
/// is led through its measured places.
std::vector<std::string> moved_places(const Project& project);

}  // namespace linewright
