#include "input/derive/quiet_values.hpp"

#include <algorithm>
#include <array>

#include "input/field_values.hpp"

namespace linewright {

namespace {

std::optional<double> number(const YamlNode& node, Dimension dimension, BareLength bare) {
  if (node.kind != YamlNode::Kind::scalar) return std::nullopt;
  if (node.quoted && !holds_tape_marks(node, dimension)) return std::nullopt;
  const auto value = read_quantity(node.text, dimension, bare);
  return value ? std::optional(*value) : std::nullopt;
}

template <std::size_t count>
std::optional<std::array<double, count>> row(const YamlNode* node, Dimension dimension,
                                             BareLength bare) {
  if (node == nullptr || node->kind != YamlNode::Kind::sequence || node->items.size() != count)
    return std::nullopt;
  std::array<double, count> numbers{};
  for (std::size_t i = 0; i < count; ++i) {
    const auto read = number(node->items[i], dimension, bare);
    if (!read) return std::nullopt;
    numbers[i] = *read;
  }
  return numbers;
}

template <typename Point>
std::optional<std::vector<Point>> list(const YamlNode* node, BareLength bare,
                                       std::optional<Point> (*read)(const YamlNode*, BareLength)) {
  if (node == nullptr || node->kind != YamlNode::Kind::sequence) return std::nullopt;
  std::vector<Point> points;
  for (const YamlNode& item : node->items) {
    const std::optional<Point> point = read(&item, bare);
    if (!point) return std::nullopt;
    points.push_back(*point);
  }
  return points;
}

}  // namespace

std::string_view quiet_text(const YamlNode& map, std::string_view key) {
  const YamlNode* node = map.find(key);
  return node != nullptr && node->kind == YamlNode::Kind::scalar ? std::string_view(node->text)
                                                                 : std::string_view();
}

bool is_bare(const YamlNode& number) {
  if (number.kind != YamlNode::Kind::scalar || number.text.empty()) return false;
  // An e may be that of an exponent; the marks of feet and inches are units.
  return std::all_of(number.text.begin(), number.text.end(), [](char letter) {
    const bool is_letter = (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z');
    return letter == 'e' || letter == 'E' || !(is_letter || letter == '\'' || letter == '"');
  });
}

std::optional<double> quiet_length_in(const YamlNode& map, std::string_view key, BareLength bare) {
  const YamlNode* node = map.find(key);
  return node != nullptr ? number(*node, Dimension::length, bare) : std::nullopt;
}

std::optional<Vec3> quiet_place(const YamlNode* node, BareLength bare) {
  const auto read = row<3>(node, Dimension::length, bare);
  return read ? std::optional(Vec3{(*read)[0], (*read)[1], (*read)[2]}) : std::nullopt;
}

std::optional<Vec2> quiet_plane_point(const YamlNode* node, BareLength bare) {
  const auto read = row<2>(node, Dimension::length, bare);
  return read ? std::optional(Vec2{(*read)[0], (*read)[1]}) : std::nullopt;
}

std::optional<std::vector<Vec3>> quiet_places(const YamlNode* node, BareLength bare) {
  return list<Vec3>(node, bare, quiet_place);
}

std::optional<std::vector<Vec2>> quiet_plane_points(const YamlNode* node, BareLength bare) {
  return list<Vec2>(node, bare, quiet_plane_point);
}

std::optional<Vec3> quiet_direction(const YamlNode* node) {
  const auto read = row<3>(node, Dimension::plain, BareLength::inch);
  return read ? std::optional(Vec3{(*read)[0], (*read)[1], (*read)[2]}) : std::nullopt;
}

BareLength bare_length_of(const YamlNode& root) {
  return quiet_text(root, "units") == "mm" ? BareLength::millimetre : BareLength::inch;
}

}  // namespace linewright
