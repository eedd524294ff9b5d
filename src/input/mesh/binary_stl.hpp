#pragma once
// Binary STL. The format has no published standard; this reads it as common practice has it: 80
// bytes of anything, a count, then 50 bytes a facet (normal, three corners, two bytes of anything),
// all little-endian.

#include <array>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <filesystem>
#include <optional>
#include <string_view>
#include <utility>

#include "input/open_file.hpp"
#include "model/mesh_triangles.hpp"

namespace linewright {

inline constexpr std::size_t stl_header_bytes = 84;
inline constexpr std::size_t stl_facet_bytes = 50;
/// From a facet's start to its first corner: the normal comes first.
inline constexpr std::size_t stl_normal_bytes = 12;

/// A file's bytes mapped into memory to be read; unmapped when this is gone.
class FileMapping {
 public:
  FileMapping(const char* bytes, std::size_t size) : bytes_(bytes), size_(size) {}
  FileMapping(FileMapping&& other) noexcept;
  FileMapping& operator=(FileMapping&& other) = delete;
  ~FileMapping();

  const char* bytes() const { return bytes_; }

 private:
  const char* bytes_;
  std::size_t size_;
};

/// A binary STL file looked at where it lies, so that whoever wants few of its triangles need not
/// keep them all. Coordinates are as written and may be anything, NaN too: ask `within` (see
/// input/mesh/coordinates.hpp) of each triangle used, and where it says no, let `read_mesh_file`
/// say what is wrong. The file must not be made shorter while this is in use: the system ends a
/// program that touches mapped bytes that are gone.
class StlView {
 public:
  /// The file, or nothing where it cannot be read, is not binary STL by its size and count, has no
  /// triangles or too many: then `read_mesh_file` reads it or says why not.
  static std::optional<StlView> open(const std::filesystem::path& path);

  /// Number of triangles, at least one.
  std::size_t size() const { return count_; }

  /// The corners of triangle `index` (under `size()`), laid out as in MeshTriangles.
  std::array<float, 9> corners(std::size_t index) const {
    std::array<float, 9> read;
    std::memcpy(read.data(),
                mapping_.bytes() + stl_header_bytes + index * stl_facet_bytes + stl_normal_bytes,
                sizeof read);
    return read;
  }

 private:
  StlView(FileMapping mapping, std::size_t count) : mapping_(std::move(mapping)), count_(count) {}

  FileMapping mapping_;
  std::size_t count_;
};

/// Number of facets where the file's size is what its count says, so that it is binary STL. No text
/// of less than gigabytes is taken for one, since its bytes 80 to 83 are large as a count. Nothing
/// where the file cannot be read, either.
std::optional<std::size_t> binary_stl_count(const OpenFile& file);

/// Reads all `count` facets, by two threads where there are many. Throws MeshFault.
MeshTriangles read_binary_stl(const OpenFile& file, std::size_t count, double largest_coordinate);

/// Throws MeshFault that says why a file of this head and size is not binary STL.
[[noreturn]] void refuse_binary_stl(std::string_view head, std::uint64_t size);

}  // namespace linewright
