#pragma once
// The nodes of a glTF scene: which mesh stands where.
// Source: "glTF 2.0 Specification", The Khronos Group, sections 3.5 and 5.25, from memory.

#include <cstdint>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "model/placement.hpp"

namespace linewright {

/// A mesh as one node shows it.
struct ShownMesh {
  std::uint64_t mesh = 0;  ///< index in the document's `meshes`
  std::string name;        ///< of the node, or of the mesh where the node has none; may be empty
  Placement placement;     ///< from the mesh's own frame to the file's; no units are changed
};

/// The meshes of the default scene, or of the first where none is the default, or of all nodes
/// without a parent where there are no scenes. Throws MeshFault, also for nodes that are reached
/// twice or stand under themselves, for skins, and for repeated copies by an extension.
std::vector<ShownMesh> shown_meshes(const nlohmann::json& document);

}  // namespace linewright
