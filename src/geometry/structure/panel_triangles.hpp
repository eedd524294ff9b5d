#pragma once
// A panel as triangles.

#include <vector>

#include "geometry/distance.hpp"

namespace linewright {

/// Corners that stray no farther than this from their common plane count as flat.
inline constexpr double flat_panel_in = 1e-3;

/// Triangles for a panel's corners, the last joined to the first. A flat polygon, convex or not, is
/// tiled. Of a warped one nothing tells which way it is folded, so every fan counts, about each
/// corner, and for four corners the evenly warped surface between the two folds: whatever comes
/// near to it is near to the nearest of them, whichever corner is named first. A flat one that
/// crosses itself is taken so, too: a fan covers at least the polygon, since how often the edges
/// wind round a place is the sum over the fan's triangles, each counted by its sense. Nothing for
/// fewer than three corners.
std::vector<Triangle3> panel_triangles(const std::vector<Vec3>& corners);

}  // namespace linewright
