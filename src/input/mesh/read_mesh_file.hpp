#pragma once
// A mesh's file into triangles, whatever its format.

#include <filesystem>
#include <optional>
#include <string>

#include "input/diagnostic.hpp"
#include "model/expected.hpp"
#include "model/mesh_triangles.hpp"
#include "model/structure.hpp"

namespace linewright {

enum class MeshFormat { stl, obj, glb };

/// By the end of the file's name, in whatever case: .stl (binary or text, told apart by what is in
/// it), .obj, .glb. Nothing for any other.
std::optional<MeshFormat> mesh_format(const std::filesystem::path& path);

/// The unit that a file of this name is in where the project does not say, in inches: a metre for
/// glTF, whose standard says so, and an inch for all others, which do not say.
double usual_inches_per_unit(const std::filesystem::path& path);

/// Reads the file that the mesh names. Triangles come as in the file, before the mesh's units and
/// placement; both only say how far out a coordinate may be. The error names the file as the
/// project does (`mesh.file`) with line and column where it is text, and tells the byte where it is
/// not. Never throws, whatever the file holds.
Expected<MeshTriangles, Diagnostic> read_mesh_file(const Mesh& mesh);

/// The same for a file by its path. `shown_name` is the name used in the error, and
/// `largest_coordinate` the farthest that a coordinate may be from zero, in the file's units.
Expected<MeshTriangles, Diagnostic> read_mesh_file(const std::filesystem::path& path,
                                                   const std::string& shown_name,
                                                   double largest_coordinate);

}  // namespace linewright
