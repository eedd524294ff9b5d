#include "input/mesh/glb_file.hpp"

#include <fmt/format.h>

#include <bit>
#include <cstdint>
#include <cstring>

#include "input/mesh/mesh_fault.hpp"

namespace linewright {
namespace {

static_assert(std::endian::native == std::endian::little, "the bytes are copied as they are");

constexpr std::uint32_t magic = 0x46546C67;       // "glTF"
constexpr std::uint32_t json_chunk = 0x4E4F534A;  // "JSON"
constexpr std::uint32_t binary_chunk = 0x004E4942;
constexpr std::uint32_t version_read = 2;
constexpr std::size_t chunk_header_bytes = 8;
constexpr std::size_t largest_json_bytes = 16u << 20;
constexpr int deepest_json = 64;

std::uint32_t number_at(std::string_view bytes, std::size_t offset) {
  std::uint32_t number = 0;
  std::memcpy(&number, bytes.data() + offset, sizeof number);
  return number;
}

struct Chunk {
  std::uint32_t type = 0;
  std::string_view bytes;
};

Chunk chunk_at(std::string_view file, std::size_t offset) {
  if (file.size() - offset < chunk_header_bytes)
    throw MeshFault(offset, "the file is cut short within the head of a chunk");
  const std::size_t length = number_at(file, offset);
  const std::size_t first = offset + chunk_header_bytes;
  if (length > file.size() - first)
    throw MeshFault(offset, fmt::format("a chunk of {} bytes, but {} are left in the file", length,
                                        file.size() - first));
  return {number_at(file, offset + 4), file.substr(first, length)};
}

}  // namespace

void check_glb_head(std::string_view head, std::uint64_t file_bytes) {
  if (head.size() < glb_head_bytes || number_at(head, 0) != magic)
    throw MeshFault(0, "this is no binary glTF file: it does not begin with 'glTF'");
  const std::uint32_t version = number_at(head, 4);
  if (version != version_read)
    throw MeshFault(4, fmt::format("glTF of version {} is not read: export as version 2", version));
  const std::uint32_t length = number_at(head, 8);
  if (length != file_bytes)
    throw MeshFault(
        8, fmt::format("the head says {} bytes, but the file has {}: is it {}?", length, file_bytes,
                       length > file_bytes ? "cut short" : "joined with something else"));
}

GlbFile open_glb(std::string_view bytes) {
  check_glb_head(bytes.substr(0, glb_head_bytes), bytes.size());
  const Chunk first = chunk_at(bytes, glb_head_bytes);
  if (first.type != json_chunk) throw MeshFault(glb_head_bytes + 4, "the first chunk must be JSON");
  if (first.bytes.size() > largest_json_bytes)
    throw MeshFault(glb_head_bytes,
                    fmt::format("the description of the scene is too large: at most "
                                "{} MiB are read",
                                largest_json_bytes >> 20));
  GlbFile glb;
  glb.json = first.bytes;
  glb.json_offset = glb_head_bytes + chunk_header_bytes;
  const std::size_t next = glb.json_offset + first.bytes.size();
  if (next == bytes.size()) return glb;
  const Chunk second = chunk_at(bytes, next);
  if (second.type == binary_chunk) {
    glb.binary = second.bytes;
    glb.binary_offset = next + chunk_header_bytes;
  }
  return glb;
}

void check_json_depth(std::string_view json, std::size_t offset) {
  int depth = 0;
  bool in_text = false;
  for (std::size_t i = 0; i < json.size(); ++i) {
    const char c = json[i];
    if (in_text) {
      if (c == '\\') ++i;
      if (c == '"') in_text = false;
      continue;
    }
    if (c == '"') in_text = true;
    if (c == '{' || c == '[') ++depth;
    if (c == '}' || c == ']') --depth;
    if (depth > deepest_json)
      throw MeshFault(offset + i, fmt::format("the description of the scene is nested deeper than "
                                              "{} levels",
                                              deepest_json));
  }
}

}  // namespace linewright
