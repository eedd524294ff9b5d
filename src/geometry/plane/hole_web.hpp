#pragma once
// How much web is left round a hole: to another hole, and to the edge of its sheet.

#include "model/structure.hpp"

namespace linewright {

/// From edge to edge of two holes in one sheet, inches; below zero, by how far the one reaches into
/// the other, where they overlap. Exact for two circles and for a circle and a polygon; two
/// polygons that cross without a corner of either inside the other overlap by nothing.
double web_between_in(const Hole& first, const Hole& second);

/// From the hole's edge to that of the sheet; below zero where the hole reaches outside.
double web_to_edge_in(const std::vector<Vec2>& outline, const Hole& hole);

}  // namespace linewright
