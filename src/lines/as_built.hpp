#pragma once
// Puts what was measured on the aeroplane in the place of what is drawn.

#include <string>
#include <vector>

#include "model/project.hpp"

namespace linewright {

/// Why a measure cannot be taken.
struct MeasureFault {
  SourceLocation where;
  std::string words;
  std::string suggestion;
};

/// Moves every point and node that was measured to where it was found; where they are drawn is kept
/// beside it (`drawn_at`). A place measured at a distance is that of the point within
/// `at_support_in` along the line; a node that near is moved by as much as the line is off there;
/// else it becomes a point of its own. Every measure of a route gets its distance along the line as
/// drawn, and the route those of its points. Nothing is known better than it can be measured: where
/// the measuring tolerance is the larger, the build tolerance becomes it, and `assumptions` says
/// so. Gives back what is wrong with the measures; the project is then only partly changed. Its
/// names must all resolve (the loader sees to it).
std::vector<MeasureFault> take_measured(Project& project);

}  // namespace linewright
