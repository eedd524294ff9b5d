#pragma once
// One closed boundary for an outline and its holes.

#include <vector>

#include "model/vector.hpp"

namespace linewright {

/// The outline, anticlockwise, with each hole joined to it by a bridge that is walked to and fro. A
/// hole that no bridge reaches, for it lies outside or across another, is left out.
std::vector<Vec2> joined_boundary(const std::vector<Vec2>& outline,
                                  const std::vector<std::vector<Vec2>>& holes);

}  // namespace linewright
