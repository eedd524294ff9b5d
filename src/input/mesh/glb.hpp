#pragma once
// Binary glTF 2.0 (.glb).
// Source: "glTF 2.0 Specification", The Khronos Group, from memory.

#include <string_view>

#include "model/mesh_triangles.hpp"

namespace linewright {

/// The triangles of all meshes that the file's scene shows (see `shown_meshes`), each where its
/// node puts it, a part for each node whose mesh or self has a name. Points and lines have no
/// surface and are passed over. The file's axes stay as they are: by the standard its y points up,
/// which the project's `rotate` turns to WL. By the standard its lengths are metres.
///
/// Refused with a MeshFault: buffers outside the file, sparse or quantized accessors, any extension
/// that the file requires and that may move surfaces (compression among them), morph targets,
/// skins, more triangles than are read.
MeshTriangles read_glb(std::string_view bytes, double largest_coordinate);

}  // namespace linewright
