#pragma once
// Wavefront OBJ: polygons over a list of vertices.
// Source: "Advanced Visualizer Manual, Appendix B1: Object Files", Wavefront Technologies, from
// memory.

#include <string_view>

#include "model/mesh_triangles.hpp"

namespace linewright {

/// The faces, cut into triangles, a part for each run of faces under an `o` or `g` name. Reads `v`
/// (three coordinates; weights and colours are passed over) and `f` (vertex numbers from one on, or
/// backwards from -1, each with or without texture and normal). What has no bearing on where the
/// surface is, is passed over; curved surfaces and calls of other files are refused. Throws
/// MeshFault.
MeshTriangles read_obj(std::string_view text, double largest_coordinate);

}  // namespace linewright
