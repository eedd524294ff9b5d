#pragma once
// The hole that a route's point names.

#include <string>

#include "lines/wall.hpp"
#include "model/project.hpp"

namespace linewright {

/// A hole and the sheet that it is in: a frame, or a wall drawn as one.
struct NamedHole {
  const Frame* frame = nullptr;  ///< nullptr: there is no such hole
  const Hole* hole = nullptr;
  bool is_whole = true;  ///< something fitted in it holds
};

/// Nothing for an empty name, and for a hole that is described at no wall.
NamedHole find_hole(const Project& project, const Walls& walls, const std::string& name);

}  // namespace linewright
