#include "input/derive/derived_nodes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace linewright {

namespace {

YamlNode row(std::initializer_list<double> numbers, const SourceLocation& where, BareLength bare,
             std::string note) {
  YamlNode node;
  node.kind = YamlNode::Kind::sequence;
  node.where = where;
  node.note = std::move(note);
  for (const double number : numbers) node.items.push_back(length_node(number, where, bare));
  return node;
}

}  // namespace

YamlNode length_node(double length_in, const SourceLocation& where, BareLength bare) {
  // What a sum leaves beyond this would be noise to whoever reads it. Zero has no sign.
  const double shown_in = std::round(length_in * 1e9) / 1e9 + 0.0;
  return text_node(fmt::format("{}{}", shown_in, bare == BareLength::inch ? "" : " in"), where);
}

YamlNode place_node(Vec3 at, const SourceLocation& where, BareLength bare, std::string note) {
  return row({at.x, at.y, at.z}, where, bare, std::move(note));
}

YamlNode plane_point_node(Vec2 at, const SourceLocation& where, BareLength bare, std::string note) {
  return row({at.u, at.v}, where, bare, std::move(note));
}

YamlNode text_node(std::string text, const SourceLocation& where) {
  YamlNode node;
  node.kind = YamlNode::Kind::scalar;
  node.text = std::move(text);
  node.where = where;
  return node;
}

YamlNode unread_node(const SourceLocation& where) {
  YamlNode node;
  node.kind = YamlNode::Kind::unread;
  node.where = where;
  return node;
}

void set_value(YamlNode& map, std::string_view key, YamlNode value) {
  if (YamlNode* there = map.find(key)) {
    *there = std::move(value);
    return;
  }
  const SourceLocation where = value.where;
  map.entries.push_back({std::string(key), where, std::move(value)});
}

void remove_key(YamlNode& map, std::string_view key) {
  std::erase_if(map.entries, [&](const YamlEntry& entry) { return entry.key == key; });
}

void rename_key(YamlNode& map, std::string_view key, std::string_view name) {
  for (YamlEntry& entry : map.entries)
    if (entry.key == key) entry.key = name;
}

std::string place_in_words(Vec3 at) {
  return fmt::format("FS {:.3f} BL {:.3f} WL {:.3f}", at.x, at.y, at.z + 0.0);
}

}  // namespace linewright
