#pragma once
// How far a mesh that draws a frame's web leaves off the edge of a described hole.

#include <optional>

#include "lines/neighbour_filter.hpp"

namespace linewright {

/// The widest that the mesh leaves open between the hole's edge, as described, and itself, in the
/// frame's plane and from the hole's middle outward; never below zero. Nothing where the mesh does
/// not lie in the web all round the hole, no farther from its edge than the hole is wide: then it
/// draws something else. Looked for in `directions_round_hole` directions, to 0.001 in.
/// Precondition: `crossing.hole`.
std::optional<double> left_open_in(const MeshPartField& mesh, const Crossing& crossing);

/// Ways outward from a hole's middle in which its edge is compared.
inline constexpr int directions_round_hole = 16;

}  // namespace linewright
