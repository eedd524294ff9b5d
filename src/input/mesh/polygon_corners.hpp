#pragma once
// Polygons of a mesh as triangles.

#include <array>
#include <vector>

#include "model/vector.hpp"

namespace linewright {

/// What cutting up hollow polygons may still cost, in steps. It bounds the time that a hostile file
/// can take to some seconds, and is far from what a drawn aeroplane needs.
using TilingBudget = double;
inline constexpr TilingBudget whole_tiling_budget = 5e8;

/// Adds the triangles of a polygon of three corners or more: a fan about its first corner where it
/// is convex, else a tiling of the polygon as seen along the axis that it mostly faces. Where it
/// crosses itself as seen there, a fan again: that covers at least the polygon. Corners stay
/// exactly what they are. Corners that coincide, as where a hole is cut in by a bridge, are
/// allowed. False, and nothing added, where the budget is spent.
bool add_polygon(const std::vector<Vec3>& polygon, TilingBudget& budget,
                 std::vector<std::array<Vec3, 3>>& triangles);

}  // namespace linewright
