#pragma once
// Where a mesh has metal in the hole of a described frame.

#include <vector>

#include "lines/neighbour_filter.hpp"
#include "rules/rule.hpp"

namespace linewright {

inline constexpr LimitRow mesh_in_hole_limit{
    .name = "mesh-in-hole",
    .subject = "line in a described hole, free of what a mesh has there",
    .value = 0,
    .source = "geometry: of the frame's hole and the mesh, one is wrong",
    .mark = Mark::calculated,
    .broken = Verdict::warn};

inline constexpr LimitRow mesh_hole_limit{
    .name = "mesh-hole",
    .subject = "what a mesh has in a described hole, from the edge as described",
    .value = same_edge_in,
    .sense = LimitSense::at_most,
    .source = "what differs more is no rounding: of hole and mesh one is wrong",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};

inline constexpr LimitRow mesh_wider_limit{
    .name = "mesh-wider-hole",
    .subject = "what a mesh leaves open round a described hole, beyond its edge as described",
    .value = same_edge_in,
    .sense = LimitSense::at_most,
    .source = "what differs more is no rounding: of hole and mesh one is wrong",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};

/// A finding for every passage through a described hole in which a mesh that lies in the frame's
/// web, as `NeighbourFilter` takes it, is in the line's way. Which of the two is right cannot be
/// told: the mesh may leave out a hole that is to be cut, or be a bracket that covers it. So is
/// what a mesh has in the hole that is in no line's way, farther in than the edge as it is
/// described, and what a mesh that goes all round the hole leaves open beyond that edge.
std::vector<Judgement> judge_meshes_in_holes(const RuleContext& context,
                                             const PreparedRoute& route);

}  // namespace linewright
