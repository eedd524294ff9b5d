#pragma once
// STL in text. The format has no published standard; this reads it as common practice has it:
// solids of facets, each a normal and a loop of three vertices.

#include <string_view>

#include "model/mesh_triangles.hpp"

namespace linewright {

/// True for a text that begins like one: with the word "solid".
bool looks_like_ascii_stl(std::string_view bytes);

/// The facets of all solids, a part for each solid that has a name. Normals are passed over: the
/// corners say it all. Throws MeshFault.
MeshTriangles read_ascii_stl(std::string_view text, double largest_coordinate);

}  // namespace linewright
