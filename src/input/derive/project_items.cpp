#include "input/derive/project_items.hpp"

#include <fmt/format.h>

#include <utility>

#include "input/derive/quiet_values.hpp"
#include "input/keys/fitting_keys.hpp"
#include "input/keys/project_keys.hpp"
#include "input/project_draft.hpp"

namespace linewright {

std::string named_item(const ProjectItem& item) {
  return fmt::format("{} {}", kind_word(item.kind), quoted_text(item.name));
}

ProjectItems::ProjectItems(std::vector<ParsedFile>& files) {
  for (ParsedFile& file : files) add_file(file);
}

void ProjectItems::add_file(ParsedFile& file) {
  YamlNode& root = file.root;
  if (YamlNode* structure = root.find("structure")) {
    add_list(*structure, "frames", Named::part, frame_map, file, nullptr);
    add_list(*structure, "channels", Named::part, channel_map, file, nullptr);
    add_list(*structure, "panels", Named::part, panel_map, file, nullptr);
    add_list(*structure, "solids", Named::part, solid_map, file, nullptr);
    add_list(*structure, "movers", Named::part, mover_map, file, nullptr);
    add_list(*structure, "meshes", Named::part, mesh_map, file, nullptr);
  }
  add_list(root, "nodes", Named::node, node_map, file, nullptr);
  add_list(root, "lines", Named::line, line_map, file, nullptr);
  add_list(root, "fittings", Named::fitting, fitting_map, file, nullptr);
  add_list(root, "routes", Named::route, route_map, file, nullptr);
}

ProjectItem* ProjectItems::add(const ProjectItem& item) {
  ProjectItem& kept = items_.emplace_back(item);
  by_name_.try_emplace({kept.kind, kept.name}, &kept);
  return &kept;
}

void ProjectItems::add_list(YamlNode& from, std::string_view key, Named kind, const MapSpec& map,
                            const ParsedFile& file, ProjectItem* holder) {
  YamlNode* list = from.find(key);
  if (list == nullptr) return;
  for (std::size_t i = 0; i < list->items.size(); ++i) {
    YamlNode& node = list->items[i];
    ProjectItem* item = add({.kind = kind,
                             .name = std::string(quiet_text(node, "name")),
                             .node = &node,
                             .map = &map,
                             .file = &file,
                             .bare = bare_length_of(file.root),
                             .holder = holder});
    const std::string_view other = map.find("mirror") != nullptr ? quiet_text(node, "mirror") : "";
    if (!other.empty()) {
      ProjectItem twin = *item;
      twin.name = other;
      twin.node = &twin_nodes_.emplace_back();
      twin.twin = item;
      twin.is_twin = true;
      item->twin = add(twin);
      const bool goes_with_holder = holder != nullptr && holder->twin != nullptr;
      if (goes_with_holder)
        item->twin->holder = holder->twin;
      else
        inserted_.push_back({&from, key, i, item->twin});
    }
    if (map.find("holes") != nullptr)
      add_list(node, "holes", Named::hole, *map.find("holes")->map, file, item);
  }
}

ProjectItem* ProjectItems::find(Named kind, std::string_view name) {
  const auto found = by_name_.find(std::pair(kind, std::string(name)));
  return found != by_name_.end() ? found->second : nullptr;
}

void ProjectItems::insert_twins() {
  // Holes first: to put a twin beside a part moves the parts, and with them their lists of holes.
  insert_twins_of(Named::hole);
  for (const Named kind : {Named::part, Named::node, Named::route}) insert_twins_of(kind);
}

void ProjectItems::insert_twins_of(Named kind) {
  // From the back, so that the places of those before stay what they were.
  for (auto each = inserted_.rbegin(); each != inserted_.rend(); ++each) {
    if (each->twin->kind != kind || each->twin->refused) continue;
    std::vector<YamlNode>& items = each->map->find(each->key)->items;
    items.insert(items.begin() + static_cast<std::ptrdiff_t>(each->index) + 1,
                 std::move(*each->twin->node));
  }
}

}  // namespace linewright
