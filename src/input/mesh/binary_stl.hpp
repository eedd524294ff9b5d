#pragma once
// Binary STL. The format has no published standard; this reads it as common practice has it: 80
// bytes of anything, a count, then 50 bytes a facet (normal, three corners, two bytes of anything),
// all little-endian.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "model/mesh_triangles.hpp"
#include "system/open_file.hpp"

namespace linewright {

inline constexpr std::size_t stl_header_bytes = 84;
inline constexpr std::size_t stl_facet_bytes = 50;
/// From a facet's start to its first corner: the normal comes first.
inline constexpr std::size_t stl_normal_bytes = 12;

/// Number of facets where the file's size is what its count says, so that it is binary STL. No text
/// of less than gigabytes is taken for one, since its bytes 80 to 83 are large as a count. Nothing
/// where the file cannot be read, either.
std::optional<std::size_t> binary_stl_count(const OpenFile& file);

/// Reads all `count` facets, by two threads where there are many. Throws MeshFault.
MeshTriangles read_binary_stl(const OpenFile& file, std::size_t count, double largest_coordinate);

/// Throws MeshFault that says why a file of this head and size is not binary STL.
[[noreturn]] void refuse_binary_stl(std::string_view head, std::uint64_t size);

}  // namespace linewright
