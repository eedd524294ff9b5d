#pragma once
// What the reader says of a map that is not as its table has it.

#include <string>
#include <string_view>
#include <vector>

#include "input/key_spec.hpp"
#include "input/yaml_document.hpp"

namespace linewright {

/// For a size that no such thing has.
inline constexpr std::string_view units_suggestion = "are the units right?";

/// What a node is, for "found …": "nothing", "'text'", "a list", "a map".
std::string found_words(const YamlNode& node);

std::vector<std::string> key_names(const MapSpec& map);

/// True where a key of the node that its map does not know was likely meant to be this one: then it
/// is not said to be missing, too.
bool is_misspelt(const YamlNode& node, const MapSpec& map, std::string_view key);

/// "keys of a route: name, system, …".
std::string keys_words(const MapSpec& map);

std::string no_map_words(const MapSpec& map, const YamlNode& node);
std::string unknown_key_words(const MapSpec& map, std::string_view written);
std::string missing_words(const MapSpec& map, const KeySpec& key);
/// Of a key that only what it is `of` has.
std::string misplaced_words(const MapSpec& map, const KeySpec& key);

}  // namespace linewright
