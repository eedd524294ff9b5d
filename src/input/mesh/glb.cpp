#include "input/mesh/glb.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "input/mesh/coordinates.hpp"
#include "input/mesh/glb_file.hpp"
#include "input/mesh/gltf_accessor.hpp"
#include "input/mesh/gltf_scene.hpp"
#include "input/mesh/mesh_builder.hpp"
#include "input/utf8.hpp"

namespace linewright {
namespace {

using nlohmann::json;

constexpr std::size_t longest_shown_name = 60;

enum Mode : std::uint64_t { points, lines, line_loop, line_strip, triangles, strip, fan };

/// Which of its corners a primitive's triangle has.
std::array<std::size_t, 3> corner_numbers(std::uint64_t mode, std::size_t triangle) {
  if (mode == strip) return {triangle, triangle + 1 + triangle % 2, triangle + 2 - triangle % 2};
  if (mode == fan) return {triangle + 1, triangle + 2, 0};
  return {3 * triangle, 3 * triangle + 1, 3 * triangle + 2};
}

/// Extensions that say how a surface looks, and nothing on where it is.
bool is_harmless(std::string_view extension) {
  return extension.starts_with("KHR_materials_") || extension.starts_with("KHR_texture_") ||
         extension == "KHR_lights_punctual" || extension == "KHR_xmp_json_ld";
}

void check_extensions(const json& document) {
  const auto required = document.find("extensionsRequired");
  if (required == document.end()) return;
  if (!required->is_array()) throw MeshFault(std::nullopt, "'extensionsRequired' must be a list");
  for (const json& extension : *required) {
    const std::string name = extension.is_string() ? extension.get<std::string>() : "?";
    if (!is_harmless(name))
      throw MeshFault(std::nullopt, fmt::format("the file needs the extension {}, which is not "
                                                "read: export without it",
                                                printable(name, longest_shown_name)));
  }
}

json read_document(const GlbFile& file) {
  check_json_depth(file.json, file.json_offset);
  try {
    json document = json::parse(file.json.begin(), file.json.end());
    if (document.is_object()) return document;
  } catch (const json::parse_error& error) {
    throw MeshFault(file.json_offset + error.byte - 1,
                    "the description of the scene is no sound JSON: export the file anew");
  } catch (const json::exception&) {
    throw MeshFault(file.json_offset, "the description of the scene has a number out of range");
  }
  throw MeshFault(file.json_offset, "the description of the scene is not a JSON object");
}

class GlbReader {
 public:
  GlbReader(std::string_view bytes, double largest_coordinate)
      : file_(open_glb(bytes)),
        document_(read_document(file_)),
        largest_coordinate_(largest_coordinate) {}

  MeshTriangles read() {
    check_extensions(document_);
    for (const ShownMesh& shown : shown_meshes(document_)) {
      const json& mesh = gltf_item(document_, "meshes", shown.mesh);
      const std::string owner = fmt::format("meshes[{}]", shown.mesh);
      const auto primitives = mesh.find("primitives");
      if (primitives == mesh.end() || !primitives->is_array())
        throw MeshFault(std::nullopt, owner + ": 'primitives' must be a list");
      mesh_.start_part(shown.name);
      for (std::size_t i = 0; i < primitives->size(); ++i)
        read_primitive((*primitives)[i], fmt::format("{}.primitives[{}]", owner, i),
                       shown.placement);
    }
    return mesh_.finish();
  }

 private:
  void read_primitive(const json& primitive, const std::string& owner, const Placement& placement) {
    const auto refuse = [&](std::string_view words) {
      throw MeshFault(std::nullopt, fmt::format("{}: {}", owner, words));
    };
    if (!primitive.is_object()) refuse("it is not an object");
    const std::uint64_t mode = gltf_number_or(primitive, "mode", triangles, owner);
    if (mode > fan) refuse("'mode' must be from 0 to 6");
    if (mode < triangles) return;
    if (primitive.contains("targets")) refuse("morph targets are not read");
    const auto attributes = primitive.find("attributes");
    if (attributes == primitive.end() || !attributes->contains("POSITION"))
      refuse("it has no POSITION: export without compression");
    const GltfAccessor positions =
        gltf_positions(document_, file_, gltf_number(*attributes, "POSITION", owner));
    std::optional<GltfAccessor> indices;
    if (primitive.contains("indices"))
      indices = gltf_indices(document_, file_, gltf_number(primitive, "indices", owner));
    const std::size_t corners = indices ? indices->count : positions.count;
    if (corners < 3 || (mode == triangles && corners % 3 != 0))
      refuse(fmt::format("{} corners do not make triangles", corners));
    const std::size_t count = mode == triangles ? corners / 3 : corners - 2;
    for (std::size_t i = 0; i < count; ++i)
      add_triangle(corner_numbers(mode, i), positions, indices, placement);
  }

  void add_triangle(const std::array<std::size_t, 3>& numbers, const GltfAccessor& positions,
                    const std::optional<GltfAccessor>& indices, const Placement& placement) {
    std::array<float, 9> corners{};
    for (std::size_t i = 0; i < 3; ++i) {
      std::size_t index = numbers[i];
      if (indices) index = index_at(*indices, index);
      if (index >= positions.count)
        throw MeshFault(
            indices->offset_of(numbers[i]),
            fmt::format("there is no position {}: {} are given", index, positions.count));
      const auto [x, y, z] = position_at(positions, index);
      const Vec3 placed = placement.apply({x, y, z});
      const std::array<double, 3> at{placed.x, placed.y, placed.z};
      for (std::size_t axis = 0; axis < 3; ++axis) {
        check_coordinate(at[axis], positions.offset_of(index) + axis * sizeof(float),
                         largest_coordinate_);
        corners[3 * i + axis] = static_cast<float>(at[axis]);
      }
    }
    mesh_.add(corners, positions.offset);
  }

  GlbFile file_;
  json document_;
  double largest_coordinate_;
  MeshBuilder mesh_;
};

}  // namespace

MeshTriangles read_glb(std::string_view bytes, double largest_coordinate) {
  return GlbReader(bytes, largest_coordinate).read();
}

}  // namespace linewright
