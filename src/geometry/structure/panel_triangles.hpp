#pragma once
// A panel as triangles.

#include <cstddef>
#include <optional>
#include <vector>

#include "geometry/distance.hpp"

namespace linewright {

/// Corners that stray no farther than this from their common plane count as flat.
inline constexpr double flat_panel_in = 1e-3;

/// Of a warped panel with more corners than this not every fan is taken: they grow with the square.
inline constexpr std::size_t most_fanned_corners = 64;

/// A panel of many corners that is not flat, as a flat one thick enough to hold it.
struct MeanPanel {
  std::vector<Triangle3> triangles;
  double stray_in = 0;  ///< how far its corners lie off the triangles' plane, at the most
};
/// Nothing for a panel that `panel_triangles` is for. Whatever way the panel is folded within its
/// outline, as seen square to its mean plane, it lies within `stray_in` of the triangles; where the
/// outline crosses itself there, within that of its convex hull.
std::optional<MeanPanel> mean_panel(const std::vector<Vec3>& corners);

/// Triangles for a panel's corners, the last joined to the first. A flat polygon, convex or not, is
/// tiled. Of a warped one nothing tells which way it is folded, so every fan counts, about each
/// corner, and for four corners the evenly warped surface between the two folds: whatever comes
/// near to it is near to the nearest of them, whichever corner is named first. A flat one that
/// crosses itself is taken so, too: a fan covers at least the polygon, since how often the edges
/// wind round a place is the sum over the fan's triangles, each counted by its sense. Nothing for
/// fewer than three corners.
std::vector<Triangle3> panel_triangles(const std::vector<Vec3>& corners);

}  // namespace linewright
