#pragma once
// Tessellated structure as its file gives it.

#include <array>
#include <cstddef>
#include <string>
#include <vector>

namespace linewright {

/// A named part of a mesh: `count` triangles from index `first` on.
struct MeshPart {
  std::string name;
  std::size_t first = 0;
  std::size_t count = 0;

  friend bool operator==(const MeshPart&, const MeshPart&) = default;
};

/// Triangles in the file's own units and axes, before the mesh is placed in the aeroplane.
/// Triangles without an area may be among them.
struct MeshTriangles {
  /// x, y, z of the first corner, then of the second and the third; all finite.
  std::vector<std::array<float, 9>> corners;
  /// In the order of the file, apart from each other, none empty. Triangles that the file puts
  /// under no name are in none; without names there are no parts.
  std::vector<MeshPart> parts;
};

}  // namespace linewright
