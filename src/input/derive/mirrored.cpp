#include "input/derive/mirrored.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "input/derive/derived_nodes.hpp"
#include "input/keys/structure_keys.hpp"

namespace linewright {

namespace {

void flip(YamlNode& number) {
  std::string& text = number.text;
  if (number.kind != YamlNode::Kind::scalar || text.empty()) return;
  if (text.front() == '-')
    text.erase(0, 1);
  else if (text.find_first_of("123456789") != std::string::npos)
    text.insert(0, 1, '-');
}

void flip_item(YamlNode& row, std::size_t index) {
  if (index < row.items.size()) flip(row.items[index]);
}

/// BL is least where it was greatest.
void mirror_box(YamlNode& box) {
  YamlNode* least = box.find("min");
  YamlNode* greatest = box.find("max");
  if (least == nullptr || greatest == nullptr) return;
  if (least->items.size() != 3 || greatest->items.size() != 3) return;
  std::swap(least->items[1], greatest->items[1]);
  flip_item(*least, 1);
  flip_item(*greatest, 1);
}

/// Of an axis of turning and of a normal that tells right from left, the image points the other
/// way.
bool turns_round(std::string_view key) {
  return key == "axis" || key == "normal";
}

void mirror_direction(YamlNode& direction, bool turns) {
  if (!turns) return flip_item(direction, 1);
  flip_item(direction, 0);
  flip_item(direction, 2);
}

/// What a copy came from is what it is a copy of.
void drop_notes(YamlNode& node) {
  node.note.clear();
  for (YamlNode& item : node.items) drop_notes(item);
  for (YamlEntry& entry : node.entries) drop_notes(entry.value);
}

/// What `mirror` says, or the twin's name of a thing that says nothing itself.
YamlNode own_name_of_twin(const YamlNode& node, const KeySpec& key, const TwinName& twin_name) {
  if (const YamlNode* mirror = node.find("mirror")) return *mirror;
  YamlNode name = *node.find(key.name);
  name.text = twin_name(key.named, name);
  return name;
}

}  // namespace

void mirror_in_plane(YamlNode& point, PlaneSide side) {
  if (side != PlaneSide::neither) flip_item(point, side == PlaneSide::first ? 0 : 1);
}

YamlNode mirrored(const YamlNode& node, const MapSpec& map, PlaneSide side,
                  const TwinName& twin_name) {
  YamlNode copy = node;
  if (&map == &box_map) {
    mirror_box(copy);
    return copy;
  }
  for (YamlEntry& entry : copy.entries) {
    const KeySpec* key = map.find(entry.key);
    YamlNode& value = entry.value;
    if (key == nullptr) continue;
    switch (key->kind) {
      case KeyKind::number:
        if (key->name == "buttock_line") flip(value);
        break;
      case KeyKind::place:
        flip_item(value, 1);
        break;
      case KeyKind::places:
      case KeyKind::pins:
        for (YamlNode& place : value.items) flip_item(place, 1);
        break;
      case KeyKind::plane_point:
        mirror_in_plane(value, side);
        break;
      case KeyKind::plane_points:
        for (YamlNode& point : value.items) mirror_in_plane(point, side);
        break;
      case KeyKind::direction:
        mirror_direction(value, turns_round(key->name));
        break;
      case KeyKind::name:
        value.text = twin_name(key->named, value);
        break;
      case KeyKind::names:
        for (YamlNode& name : value.items) name.text = twin_name(key->named, name);
        break;
      case KeyKind::own_name:
        value = own_name_of_twin(node, *key, twin_name);
        break;
      case KeyKind::map:
        value = mirrored(value, *key->map, side, twin_name);
        break;
      case KeyKind::maps:
        for (YamlNode& item : value.items) item = mirrored(item, *key->map, side, twin_name);
        break;
      case KeyKind::named_maps:
        for (YamlEntry& named : value.entries)
          named.value = mirrored(named.value, *key->map, side, twin_name);
        break;
      default:
        break;
    }
  }
  remove_key(copy, "mirror");
  drop_notes(copy);
  return copy;
}

}  // namespace linewright
