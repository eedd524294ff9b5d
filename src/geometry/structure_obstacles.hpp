#pragma once
// The structure taken apart into segments and triangles.

#include <vector>

#include "geometry/obstacles.hpp"
#include "model/structure.hpp"

namespace linewright {

struct StructureShapes {
  std::vector<Part> parts;  ///< frames, channels, panels, solids, movers, each in drawn order
  std::vector<Obstacle> obstacles;
};

/// Frames: the web as a face at each side of the sheet, not swollen, and every hole's edge at both.
/// A guard (trim, grommet, bushing) covers the sheet next to the hole's edge, so the face starts
/// `trim_lip_in` from it: else the face would stand in for the edge the guard covers. Where the
/// grown hole would reach the outline or another hole, the face keeps the hole as drawn, which can
/// only understate a gap. Frame outlines are no edges: they lie against the skin.
///
/// Channels: one strip for each wall and leg, swollen by half the sheet, and as free edges the
/// two long ones and the two cut ends. Where the edge is guarded, walls start `trim_lip_in` from
/// each of these, measured along the wall and along the path; what is narrower goes altogether.
///
/// Panels: a fan, swollen by half the sheet; their edges are no edges. Boxes: their surface, and a
/// swollen plate inside, so that a line that lies wholly within is not clear of the box. Cylinders:
/// the axis swollen by the radius; its round ends reach a radius too far. Movers: see mover_sweep.
StructureShapes shapes_of(const Structure& structure);

}  // namespace linewright
