#include "input/derive/expanded.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <string_view>

#include "input/derive/derived_nodes.hpp"
#include "input/derive/quiet_values.hpp"
#include "input/derive/yaml_writer.hpp"
#include "input/keys/project_keys.hpp"
#include "system/path_text.hpp"

namespace linewright {

namespace {

/// Writes the unit beside bare lengths and volumes.
void state_unit(YamlNode& number, Dimension dimension, BareLength bare) {
  if (!is_bare(number)) return;
  const std::string unit = bare == BareLength::inch ? "in" : "mm";
  if (dimension == Dimension::length) number.text += " " + unit;
  if (dimension == Dimension::volume) number.text += " " + unit + "3";
}

void state_units_in(YamlNode& map, const MapSpec& spec, BareLength bare);

void state_units_of(YamlNode& value, const KeySpec& key, BareLength bare) {
  switch (key.kind) {
    case KeyKind::number:
      state_unit(value, key.number.dimension, bare);
      break;
    case KeyKind::pair:
    case KeyKind::numbers:
      for (YamlNode& item : value.items) state_unit(item, key.number.dimension, bare);
      break;
    case KeyKind::place:
    case KeyKind::plane_point:
      for (YamlNode& item : value.items) state_unit(item, Dimension::length, bare);
      break;
    case KeyKind::places:
    case KeyKind::pins:
    case KeyKind::plane_points:
      for (YamlNode& place : value.items)
        for (YamlNode& item : place.items) state_unit(item, Dimension::length, bare);
      break;
    case KeyKind::map:
      state_units_in(value, *key.map, bare);
      break;
    case KeyKind::maps:
      for (YamlNode& item : value.items) state_units_in(item, *key.map, bare);
      break;
    case KeyKind::named_maps:
      for (YamlEntry& entry : value.entries) state_units_in(entry.value, *key.map, bare);
      break;
    default:
      break;
  }
}

void state_units_in(YamlNode& map, const MapSpec& spec, BareLength bare) {
  for (YamlEntry& entry : map.entries)
    if (const KeySpec* key = spec.find(entry.key)) state_units_of(entry.value, *key, bare);
}

/// Mesh files are named from the folder of the file that names them.
void name_from_project(YamlNode& root, const std::filesystem::path& folder,
                       const std::filesystem::path& project_folder) {
  YamlNode* structure = root.find("structure");
  YamlNode* meshes = structure != nullptr ? structure->find("meshes") : nullptr;
  if (meshes == nullptr) return;
  for (YamlNode& mesh : meshes->items)
    if (YamlNode* file = mesh.find("file"))
      file->text = text_of(
          (folder / path_of(file->text)).lexically_normal().lexically_relative(project_folder));
}

/// Adds what another file says under the same key.
void merge(YamlNode& into, const YamlEntry& from) {
  YamlNode* there = into.find(from.key);
  if (there == nullptr) {
    into.entries.push_back(from);
    return;
  }
  if (from.value.kind == YamlNode::Kind::map)
    for (const YamlEntry& entry : from.value.entries) merge(*there, entry);
  there->items.insert(there->items.end(), from.value.items.begin(), from.value.items.end());
}

}  // namespace

std::string expanded(const std::vector<ParsedFile>& files) {
  const ParsedFile& project = files.front();
  const BareLength bare = bare_length_of(project.root);
  YamlNode whole;
  whole.kind = YamlNode::Kind::map;
  for (const ParsedFile& file : files) {
    YamlNode root = file.root;
    const BareLength own = bare_length_of(root);
    if (own != bare) state_units_in(root, project_map, own);
    name_from_project(root, file.folder, project.folder);
    for (const YamlEntry& entry : root.entries) {
      const bool of_file = entry.key == "linewright" || entry.key == "units";
      if (entry.key == "include" || (of_file && file.included)) continue;
      merge(whole, entry);
    }
  }
  // Settings come first, the sections after them in the order in which they build on each other.
  const auto order = [](const YamlEntry& entry) {
    const auto key = std::find_if(project_keys.begin(), project_keys.end(),
                                  [&](const KeySpec& each) { return each.name == entry.key; });
    return key - project_keys.begin();
  };
  std::stable_sort(whole.entries.begin(), whole.entries.end(),
                   [&](const YamlEntry& a, const YamlEntry& b) { return order(a) < order(b); });
  return yaml_text_of(whole);
}

}  // namespace linewright
