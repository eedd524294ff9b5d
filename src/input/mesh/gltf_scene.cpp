#include "input/mesh/gltf_scene.hpp"

#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "input/mesh/gltf_accessor.hpp"
#include "input/mesh/mesh_fault.hpp"
#include "input/mesh/text_words.hpp"

namespace linewright {
namespace {

using nlohmann::json;

[[noreturn]] void refuse(const std::string& owner, const std::string& words) {
  throw MeshFault(std::nullopt, fmt::format("{}: {}", owner, words));
}

template <std::size_t Count>
std::array<double, Count> numbers(const json& node, const char* key,
                                  std::array<double, Count> absent, const std::string& owner) {
  const auto member = node.find(key);
  if (member == node.end()) return absent;
  std::array<double, Count> read{};
  bool sound = member->is_array() && member->size() == Count;
  for (std::size_t i = 0; sound && i < Count; ++i) {
    sound = (*member)[i].is_number();
    if (sound) read[i] = (*member)[i].get<double>();
  }
  if (!sound) refuse(owner, fmt::format("'{}' must be a list of {} numbers", key, Count));
  return read;
}

/// Columns of four, as the file has them.
Placement from_matrix(const std::array<double, 16>& m, const std::string& owner) {
  if (m[3] != 0 || m[7] != 0 || m[11] != 0 || m[15] != 1)
    refuse(owner, "the last row of 'matrix' must be 0 0 0 1");
  return {{m[0], m[4], m[8], m[1], m[5], m[9], m[2], m[6], m[10]}, {m[12], m[13], m[14]}};
}

/// A turn by a quaternion x, y, z, w, brought to unit length.
Placement turned_by(std::array<double, 4> q, const std::string& owner) {
  const double length = std::hypot(std::hypot(q[0], q[1]), std::hypot(q[2], q[3]));
  if (!(length > 1e-6)) refuse(owner, "'rotation' must not be zero");
  for (double& part : q) part /= length;
  const auto [x, y, z, w] = q;
  return {{1 - 2 * (y * y + z * z), 2 * (x * y - z * w), 2 * (x * z + y * w),  //
           2 * (x * y + z * w), 1 - 2 * (x * x + z * z), 2 * (y * z - x * w),  //
           2 * (x * z - y * w), 2 * (y * z + x * w), 1 - 2 * (x * x + y * y)},
          {}};
}

Placement placement_of(const json& node, const std::string& owner) {
  if (node.contains("matrix")) return from_matrix(numbers<16>(node, "matrix", {}, owner), owner);
  const auto [sx, sy, sz] = numbers<3>(node, "scale", {1, 1, 1}, owner);
  const auto [tx, ty, tz] = numbers<3>(node, "translation", {0, 0, 0}, owner);
  const Placement stretched{{sx, 0, 0, 0, sy, 0, 0, 0, sz}, {}};
  const Placement turn = turned_by(numbers<4>(node, "rotation", {0, 0, 0, 1}, owner), owner);
  return composed(moved({tx, ty, tz}), composed(turn, stretched));
}

std::string name_of(const json& object) {
  const auto name = object.find("name");
  return name != object.end() && name->is_string() ? part_name(name->get<std::string>())
                                                   : std::string();
}

/// Indices of the nodes in a list that may be absent.
std::vector<std::uint64_t> node_list(const json& object, const char* key,
                                     const std::string& owner) {
  std::vector<std::uint64_t> nodes;
  const auto list = object.find(key);
  if (list == object.end()) return nodes;
  if (!list->is_array()) refuse(owner, fmt::format("'{}' must be a list", key));
  for (const json& item : *list) {
    if (!item.is_number_unsigned())
      refuse(owner, fmt::format("'{}' must be a list of nodes' numbers", key));
    nodes.push_back(item.get<std::uint64_t>());
  }
  return nodes;
}

std::size_t count_of(const json& document, const char* list) {
  const auto items = document.find(list);
  return items != document.end() && items->is_array() ? items->size() : 0;
}

std::vector<std::uint64_t> roots(const json& document) {
  if (count_of(document, "scenes") > 0) {
    const std::uint64_t index = gltf_number_or(document, "scene", 0, "the document");
    return node_list(gltf_item(document, "scenes", index), "nodes",
                     fmt::format("scenes[{}]", index));
  }
  std::vector<bool> has_parent(count_of(document, "nodes"));
  for (std::size_t i = 0; i < has_parent.size(); ++i)
    for (const std::uint64_t child :
         node_list(gltf_item(document, "nodes", i), "children", fmt::format("nodes[{}]", i)))
      if (child < has_parent.size()) has_parent[child] = true;
  std::vector<std::uint64_t> found;
  for (std::size_t i = 0; i < has_parent.size(); ++i)
    if (!has_parent[i]) found.push_back(i);
  return found;
}

/// Refuses what would put the mesh's surface elsewhere than its corners say.
void check_node(const json& node, const std::string& owner) {
  if (node.contains("skin")) refuse(owner, "meshes bent by a skin are not read");
  const auto extensions = node.find("extensions");
  if (extensions != node.end() && extensions->contains("EXT_mesh_gpu_instancing"))
    refuse(owner, "copies by EXT_mesh_gpu_instancing are not read: export each as a node");
}

struct Visit {
  std::uint64_t node;
  Placement parent;
};

/// So that the first of the list is taken first from the end.
void push_reversed(const std::vector<std::uint64_t>& nodes, const Placement& parent,
                   std::vector<Visit>& open) {
  for (auto node = nodes.rbegin(); node != nodes.rend(); ++node) open.push_back({*node, parent});
}

}  // namespace

std::vector<ShownMesh> shown_meshes(const json& document) {
  std::vector<ShownMesh> shown;
  std::vector<bool> reached(count_of(document, "nodes"));
  std::vector<Visit> open;
  push_reversed(roots(document), {}, open);
  while (!open.empty()) {
    const Visit visit = open.back();
    open.pop_back();
    const json& node = gltf_item(document, "nodes", visit.node);
    const std::string owner = fmt::format("nodes[{}]", visit.node);
    if (reached[visit.node]) refuse(owner, "a node must not be reached twice");
    reached[visit.node] = true;
    const Placement placement = composed(visit.parent, placement_of(node, owner));
    if (node.contains("mesh")) {
      check_node(node, owner);
      const std::uint64_t mesh = gltf_number(node, "mesh", owner);
      std::string name = name_of(node);
      if (name.empty()) name = name_of(gltf_item(document, "meshes", mesh));
      shown.push_back({mesh, std::move(name), placement});
    }
    push_reversed(node_list(node, "children", owner), placement, open);
  }
  return shown;
}

}  // namespace linewright
