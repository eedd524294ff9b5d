#pragma once
// Nodes of what was worked out, in the place of what was written.

#include <string>
#include <string_view>

#include "input/quantity.hpp"
#include "input/yaml_document.hpp"
#include "model/vector.hpp"

namespace linewright {

/// A length that reads back as the same number, with its unit where a bare one is in millimetres.
YamlNode length_node(double length_in, const SourceLocation& where, BareLength bare);
YamlNode place_node(Vec3 at, const SourceLocation& where, BareLength bare, std::string note);
YamlNode plane_point_node(Vec2 at, const SourceLocation& where, BareLength bare, std::string note);
YamlNode text_node(std::string text, const SourceLocation& where);
/// For what could not be worked out.
YamlNode unread_node(const SourceLocation& where);

/// Puts a value under a key: in the place of the one it has, or at the end.
void set_value(YamlNode& map, std::string_view key, YamlNode value);
void remove_key(YamlNode& map, std::string_view key);
/// The key's entry under another name.
void rename_key(YamlNode& map, std::string_view key, std::string_view name);

/// "FS 190.000 BL -8.000 WL 14.000", for messages.
std::string place_in_words(Vec3 at);

}  // namespace linewright
