#pragma once
// The structure taken apart into segments and triangles.

#include <vector>

#include "geometry/structure/obstacles.hpp"
#include "model/structure.hpp"

namespace linewright {

struct StructureShapes {
  std::vector<Part> parts;  ///< frames, channels, panels, solids, movers, each in drawn order
  std::vector<Obstacle> obstacles;
};

/// Frames: the web as slabs through the whole sheet, so that a line that lies within the thickness
/// of a plywood or foam web is seen, and every hole's edge as its wall from side to side, a
/// turned one as far beyond as its radius: to which side it turns is not told.
/// A guard (trim, grommet, bushing) covers the sheet next to the hole's edge, so the web starts
/// `trim_lip_in` from it: else the web would stand in for the edge the guard covers. Where the
/// grown hole would reach the outline or another hole, the web keeps the hole as drawn, which can
/// only understate a gap. Frame outlines are no edges: they lie against the skin.
///
/// Channels: see channel_shape; its walls and edges are swollen by half the sheet, and a turned
/// edge by its radius besides. Where the edge is guarded, what lies within `trim_lip_in` of a free
/// edge, measured along the wall and along the path, is a face with the edge's guard; a wall too
/// narrow for more is all guarded.
///
/// Holes in channels, panels and boxes: the wall as it is, and the hole's inside as triangles with
/// its guard and name.
///
/// Panels: see panel_triangles, swollen by half the sheet; their edges are no edges. Boxes: slabs
/// that fill them, and a swollen plate inside that says how deep a line lies. Cylinders: the axis
/// swollen by the radius; its round ends reach a radius too far. Movers: see mover_sweep.
StructureShapes shapes_of(const Structure& structure);

}  // namespace linewright
