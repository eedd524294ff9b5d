#pragma once
// Plane polygons: frame webs and their holes. Boost.Geometry does the containment and distance.
// A polygon is its corners in either sense of rotation; the last joins the first. Lengths are
// inches, areas square inches.

#include <array>
#include <optional>
#include <vector>

#include "model/structure.hpp"

namespace linewright {

/// True inside or on the closed polygon. Fewer than three corners cover nothing.
bool covers(const std::vector<Vec2>& polygon, Vec2 point);
/// True inside or on the edge of the hole; exact for a circle.
bool covers(const Hole& hole, Vec2 point);
/// Distance from `point` to the nearest place on the hole's edge; exact for a circle.
double edge_distance(const Hole& hole, Vec2 point);
/// The same for a polygon; infinite where it has no corners.
double edge_distance(const std::vector<Vec2>& polygon, Vec2 point);
/// Diameter of the largest circle that the hole leaves room for: exact for a circle, else to 0.001
/// of the hole's size, never more than there is.
double widest_circle_in(const Hole& hole);
/// True when the two holes share a place, if only on their edges: there is no web between them.
bool overlap(const Hole& first, const Hole& second);
/// True when a place of the hole lies outside the outline. It may touch it from inside.
bool leaves(const std::vector<Vec2>& outline, const Hole& hole);
/// The hole as a closed polygon. Circles become chords inside the circle, none farther from it
/// than `sagitta_in` (above zero), and never fewer than eight.
std::vector<Vec2> edge_polygon(const Hole& hole, double sagitta_in);
/// True when the polygon has an area, finite corners and no edge that crosses or touches another.
bool is_simple_polygon(const std::vector<Vec2>& polygon);

/// Area inside a simple polygon, never negative.
double area(const std::vector<Vec2>& polygon);
/// True when `inner` lies inside `outer` without touching its edge. Both simple.
bool encloses(const std::vector<Vec2>& outer, const std::vector<Vec2>& inner);
/// True when the two simple polygons share no point.
bool apart(const std::vector<Vec2>& first, const std::vector<Vec2>& second);
/// A simple polygon grown outwards by `by_in` (above zero): edges moved out, corners that point
/// outwards rounded by chords inside the true arc, none farther from it than `sagitta_in` (above
/// zero). Nothing where edges are too short or gaps too narrow for that, so that the moved edges
/// would cross.
std::optional<std::vector<Vec2>> grown(const std::vector<Vec2>& polygon, double by_in,
                                       double sagitta_in);

/// Triangles that tile `outline` less `holes` (holes inside the outline, apart from each other),
/// by ear clipping with each hole joined to the outline by a bridge. All turn anticlockwise.
/// Repeated and collinear corners are allowed. A hole that breaks the precondition, so that no
/// bridge reaches it, stays uncut.
std::vector<std::array<Vec2, 3>> triangulate(const std::vector<Vec2>& outline,
                                             const std::vector<std::vector<Vec2>>& holes);

}  // namespace linewright
