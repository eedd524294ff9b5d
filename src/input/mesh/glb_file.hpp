#pragma once
// The container of a binary glTF file.
// Source: "glTF 2.0 Specification", The Khronos Group, section 4 (GLB File Format), from memory.

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace linewright {

struct GlbFile {
  std::string_view json;
  std::size_t json_offset = 0;
  std::string_view binary;  ///< the BIN chunk; empty where there is none
  std::size_t binary_offset = 0;
};

inline constexpr std::size_t glb_head_bytes = 12;

/// Throws MeshFault where the first bytes are not the head of a file of `file_bytes`: a wrong
/// magic, version or length.
void check_glb_head(std::string_view head, std::uint64_t file_bytes);

/// The chunks of a file's bytes. Throws MeshFault for a wrong magic, version or length, and where
/// the first chunk is not JSON or is larger than is read.
GlbFile open_glb(std::string_view bytes);

/// Throws MeshFault where lists and objects are nested deeper than a scene's description can need.
/// `offset` is where the text stands in the file.
void check_json_depth(std::string_view json, std::size_t offset);

}  // namespace linewright
