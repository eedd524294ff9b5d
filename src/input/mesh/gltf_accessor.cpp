#include "input/mesh/gltf_accessor.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "input/mesh/mesh_fault.hpp"

namespace linewright {
namespace {

using nlohmann::json;

constexpr std::uint64_t number_limit = std::uint64_t{1} << 32;
constexpr std::uint64_t byte_component = 5121;
constexpr std::uint64_t short_component = 5123;
constexpr std::uint64_t int_component = 5125;
constexpr std::uint64_t float_component = 5126;
constexpr std::uint64_t largest_stride = 252;
constexpr std::size_t position_bytes = 3 * sizeof(float);

[[noreturn]] void refuse(const std::string& owner, const std::string& words) {
  throw MeshFault(std::nullopt, fmt::format("{}: {}", owner, words));
}

/// Throws unless the buffer is the file's own BIN chunk. Returns its length.
std::uint64_t buffer_bytes(const json& document, const GlbFile& file, std::uint64_t index) {
  const json& buffer = gltf_item(document, "buffers", index);
  const std::string owner = fmt::format("buffers[{}]", index);
  if (buffer.contains("uri") || index != 0)
    refuse(owner, "buffers outside the file's own BIN chunk are not read: export as one .glb");
  const std::uint64_t length = gltf_number(buffer, "byteLength", owner);
  if (length > file.binary.size())
    refuse(owner,
           fmt::format("it says {} bytes, but the BIN chunk has {}", length, file.binary.size()));
  return length;
}

/// The elements of an accessor that is no longer looked at but for where they lie.
GltfAccessor locate(const json& document, const GlbFile& file, const json& accessor,
                    std::uint64_t element_bytes, const std::string& owner) {
  if (accessor.contains("sparse")) refuse(owner, "sparse accessors are not read");
  const std::uint64_t view_index = gltf_number(accessor, "bufferView", owner);
  const json& view = gltf_item(document, "bufferViews", view_index);
  const std::string view_owner = fmt::format("bufferViews[{}]", view_index);
  const std::uint64_t view_offset = gltf_number_or(view, "byteOffset", 0, view_owner);
  const std::uint64_t view_length = gltf_number(view, "byteLength", view_owner);
  const std::uint64_t buffer_length =
      buffer_bytes(document, file, gltf_number(view, "buffer", view_owner));
  if (view_offset + view_length > buffer_length)
    refuse(view_owner, fmt::format("it ends at byte {} of a buffer of {}",
                                   view_offset + view_length, buffer_length));
  const std::uint64_t stride = gltf_number_or(view, "byteStride", element_bytes, view_owner);
  if (stride < element_bytes || stride > largest_stride)
    refuse(view_owner, fmt::format("a byteStride of {} is too {} for elements of {} bytes", stride,
                                   stride < element_bytes ? "small" : "large", element_bytes));
  const std::uint64_t count = gltf_number(accessor, "count", owner);
  if (count == 0) refuse(owner, "'count' must not be zero");
  const std::uint64_t first = gltf_number_or(accessor, "byteOffset", 0, owner);
  const std::uint64_t length = stride * (count - 1) + element_bytes;
  if (first + length > view_length)
    refuse(owner, fmt::format("{} elements end at byte {} of a buffer view of {}", count,
                              first + length, view_length));
  GltfAccessor located;
  located.bytes = file.binary.substr(view_offset + first, length);
  located.offset = file.binary_offset + view_offset + first;
  located.count = count;
  located.stride = stride;
  return located;
}

bool has_type(const json& accessor, const char* type) {
  const auto written = accessor.find("type");
  return written != accessor.end() && *written == type;
}

}  // namespace

std::uint64_t gltf_number(const json& object, const char* key, const std::string& owner) {
  const auto member = object.find(key);
  if (member == object.end()) refuse(owner, fmt::format("'{}' is missing", key));
  if (!member->is_number_unsigned() || member->get<std::uint64_t>() >= number_limit)
    refuse(owner, fmt::format("'{}' must be a whole number from 0 to {}", key, number_limit - 1));
  return member->get<std::uint64_t>();
}

std::uint64_t gltf_number_or(const json& object, const char* key, std::uint64_t absent,
                             const std::string& owner) {
  return object.contains(key) ? gltf_number(object, key, owner) : absent;
}

const json& gltf_item(const json& document, const char* list, std::uint64_t index) {
  const auto items = document.find(list);
  if (items == document.end() || !items->is_array() || index >= items->size())
    throw MeshFault(std::nullopt, fmt::format("there is no {}[{}]", list, index));
  const json& item = (*items)[index];
  if (!item.is_object()) refuse(fmt::format("{}[{}]", list, index), "it is not an object");
  return item;
}

GltfAccessor gltf_positions(const json& document, const GlbFile& file, std::uint64_t index) {
  const json& accessor = gltf_item(document, "accessors", index);
  const std::string owner = fmt::format("accessors[{}]", index);
  if (!has_type(accessor, "VEC3") ||
      gltf_number(accessor, "componentType", owner) != float_component)
    refuse(owner, "positions must be VEC3 of floats: export without quantization");
  return locate(document, file, accessor, position_bytes, owner);
}

GltfAccessor gltf_indices(const json& document, const GlbFile& file, std::uint64_t index) {
  const json& accessor = gltf_item(document, "accessors", index);
  const std::string owner = fmt::format("accessors[{}]", index);
  const std::uint64_t component = gltf_number(accessor, "componentType", owner);
  const unsigned bytes = component == byte_component    ? 1
                         : component == short_component ? 2
                         : component == int_component   ? 4
                                                        : 0;
  if (bytes == 0 || !has_type(accessor, "SCALAR"))
    refuse(owner, "indices must be SCALAR of unsigned bytes, shorts or ints");
  GltfAccessor located = locate(document, file, accessor, bytes, owner);
  located.component_bytes = bytes;
  return located;
}

std::array<float, 3> position_at(const GltfAccessor& positions, std::size_t index) {
  std::array<float, 3> position;
  std::memcpy(position.data(), positions.bytes.data() + index * positions.stride, sizeof position);
  return position;
}

// Little-endian, so that the bytes of a shorter number are the lower ones of the longer.
std::uint32_t index_at(const GltfAccessor& indices, std::size_t index) {
  std::uint32_t value = 0;
  std::memcpy(&value, indices.bytes.data() + index * indices.stride, indices.component_bytes);
  return value;
}

}  // namespace linewright
