#pragma once
// What a mesh's reader throws where the file is not as it must be; `read_mesh_file` makes it an
// error that names the file.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <stdexcept>
#include <string>

namespace linewright {

/// More than a home-built aeroplane can sensibly be tessellated into; keeps memory within bounds.
inline constexpr std::size_t most_mesh_triangles = 20'000'000;
/// What that many triangles take as binary STL, and some.
inline constexpr std::uint64_t largest_mesh_file_bytes = 1u << 30;

class MeshFault : public std::runtime_error {
 public:
  /// `offset`: the byte of the file that it concerns; nothing for the file as a whole.
  MeshFault(std::optional<std::size_t> offset, const std::string& words)
      : std::runtime_error(words), offset_(offset) {}

  std::optional<std::size_t> offset() const { return offset_; }

 private:
  std::optional<std::size_t> offset_;
};

}  // namespace linewright
