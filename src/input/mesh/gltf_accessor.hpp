#pragma once
// Positions and indices of a binary glTF file.
// Source: "glTF 2.0 Specification", The Khronos Group, sections 3.6 and 5.1, from memory.

#include <array>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>

#include "input/mesh/glb_file.hpp"

namespace linewright {

/// A member that is a whole number under 2^32. Throws MeshFault where it is absent or anything
/// else. `owner` names the object in messages: "accessors[3]".
std::uint64_t gltf_number(const nlohmann::json& object, const char* key, const std::string& owner);
/// The same, with what stands for an absent one.
std::uint64_t gltf_number_or(const nlohmann::json& object, const char* key, std::uint64_t absent,
                             const std::string& owner);
/// The object at `index` of a list of the document. Throws MeshFault where there is none.
const nlohmann::json& gltf_item(const nlohmann::json& document, const char* list,
                                std::uint64_t index);

/// Elements of one accessor, all within the file.
struct GltfAccessor {
  std::string_view bytes;        ///< from the first element to the end of the last
  std::size_t offset = 0;        ///< of the first element in the file
  std::size_t count = 0;         ///< at least one
  std::size_t stride = 0;        ///< bytes from one element to the next
  unsigned component_bytes = 0;  ///< of an index: 1, 2 or 4

  /// Place in the file of an element.
  std::size_t offset_of(std::size_t index) const { return offset + index * stride; }
};

/// Three floats an element. Throws MeshFault for anything else, for sparse accessors, for buffers
/// outside the file, and for what does not fit.
GltfAccessor gltf_positions(const nlohmann::json& document, const GlbFile& file,
                            std::uint64_t index);
/// One unsigned number of 1, 2 or 4 bytes an element. Throws MeshFault likewise.
GltfAccessor gltf_indices(const nlohmann::json& document, const GlbFile& file, std::uint64_t index);

/// Element `index` (under `count`).
std::array<float, 3> position_at(const GltfAccessor& positions, std::size_t index);
std::uint32_t index_at(const GltfAccessor& indices, std::size_t index);

}  // namespace linewright
