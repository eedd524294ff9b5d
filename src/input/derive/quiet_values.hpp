#pragma once
// Values of a tree, read without a word: what is wrong with them is said when the tree is read for
// good.

#include <optional>
#include <string_view>
#include <vector>

#include "input/quantity.hpp"
#include "input/yaml_document.hpp"
#include "model/vector.hpp"

namespace linewright {

/// The text of a scalar under `key`; empty where there is none.
std::string_view quiet_text(const YamlNode& map, std::string_view key);

/// True for a number that stands without a unit.
bool is_bare(const YamlNode& number);

/// Inches, or nothing where the key is absent or holds no length.
std::optional<double> quiet_length_in(const YamlNode& map, std::string_view key, BareLength bare);

std::optional<Vec3> quiet_place(const YamlNode* node, BareLength bare);
std::optional<Vec2> quiet_plane_point(const YamlNode* node, BareLength bare);
std::optional<std::vector<Vec3>> quiet_places(const YamlNode* node, BareLength bare);
std::optional<std::vector<Vec2>> quiet_plane_points(const YamlNode* node, BareLength bare);
/// Three plain numbers.
std::optional<Vec3> quiet_direction(const YamlNode* node);

/// What the file's bare lengths are in.
BareLength bare_length_of(const YamlNode& root);

}  // namespace linewright
