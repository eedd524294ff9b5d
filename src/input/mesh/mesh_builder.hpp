#pragma once
// Triangles put together one by one, with the parts they belong to.

#include <string>
#include <utility>

#include "input/mesh/mesh_fault.hpp"
#include "model/mesh_triangles.hpp"

namespace linewright {

class MeshBuilder {
 public:
  /// What is added from here on belongs to a part of this name; to none where it is empty.
  void start_part(std::string name) {
    end_part();
    name_ = std::move(name);
  }

  /// Throws MeshFault at `offset` where there are too many.
  void add(const std::array<float, 9>& corners, std::size_t offset) {
    if (mesh_.corners.size() >= most_mesh_triangles)
      throw MeshFault(offset, "there are more than " + std::to_string(most_mesh_triangles) +
                                  " triangles: simplify the mesh");
    mesh_.corners.push_back(corners);
  }

  /// The mesh. Throws MeshFault where it has no triangles.
  MeshTriangles finish() {
    end_part();
    if (mesh_.corners.empty()) throw MeshFault(std::nullopt, "the mesh has no triangles");
    return std::move(mesh_);
  }

 private:
  void end_part() {
    const std::size_t count = mesh_.corners.size() - first_;
    if (count > 0 && !name_.empty()) mesh_.parts.push_back({std::move(name_), first_, count});
    first_ = mesh_.corners.size();
  }

  MeshTriangles mesh_;
  std::string name_;
  std::size_t first_ = 0;
};

}  // namespace linewright
