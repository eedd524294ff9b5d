#pragma once
// Plane polygons: frame webs and their holes. Boost.Geometry does the containment and distance.

#include <array>
#include <vector>

#include "model/structure.hpp"

namespace linewright {

/// True inside or on the closed polygon.
bool covers(const std::vector<Vec2>& polygon, Vec2 point);
/// True inside or on the edge of the hole; exact for a circle.
bool covers(const Hole& hole, Vec2 point);
/// Distance from `point` to the nearest place on the hole's edge; exact for a circle.
double edge_distance(const Hole& hole, Vec2 point);
double edge_distance(const std::vector<Vec2>& polygon, Vec2 point);
/// The hole as a closed polygon. Circles become chords inside the circle, none farther from it
/// than `sagitta_in`.
std::vector<Vec2> edge_polygon(const Hole& hole, double sagitta_in);
/// True when the polygon has an area, finite corners and no edge that crosses another.
bool is_simple_polygon(const std::vector<Vec2>& polygon);
/// Triangles that tile `outline` less `holes` (holes inside the outline, apart from each other),
/// by ear clipping with each hole joined to the outline by a bridge.
std::vector<std::array<Vec2, 3>> triangulate(const std::vector<Vec2>& outline,
                                             const std::vector<std::vector<Vec2>>& holes);

}  // namespace linewright
