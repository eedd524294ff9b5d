#include "input/field_words.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "input/project_draft.hpp"
#include "input/suggest_name.hpp"

namespace linewright {

std::string found_words(const YamlNode& node) {
  switch (node.kind) {
    case YamlNode::Kind::null:
    case YamlNode::Kind::unread:
      return "nothing";
    case YamlNode::Kind::scalar:
      return quoted_text(node.text);
    case YamlNode::Kind::sequence:
      return "a list";
    case YamlNode::Kind::map:
      return "a map";
  }
  return "nothing";
}

std::vector<std::string> key_names(const MapSpec& map) {
  std::vector<std::string> names;
  for (const KeySpec& key : map.keys) names.emplace_back(key.name);
  return names;
}

bool is_misspelt(const YamlNode& node, const MapSpec& map, std::string_view key) {
  const std::vector<std::string> known = key_names(map);
  return std::any_of(node.entries.begin(), node.entries.end(), [&](const YamlEntry& entry) {
    return map.find(entry.key) == nullptr && meant_name(entry.key, known) == key;
  });
}

std::string keys_words(const MapSpec& map) {
  std::string words = fmt::format("keys of {}: ", map.name);
  for (const KeySpec& key : map.keys) {
    if (&key != &map.keys.front()) words += ", ";
    words += key.name;
  }
  return words;
}

std::string no_map_words(const MapSpec& map, const YamlNode& node) {
  if (map.voice == Voice::by_key)
    return fmt::format("expected {}'s keys and values, found {}", map.name, found_words(node));
  return fmt::format("expected {} as a map of keys and values, found {}", map.name,
                     found_words(node));
}

std::string unknown_key_words(const MapSpec& map, std::string_view written) {
  if (map.voice == Voice::by_key)
    return fmt::format("{} has no key {}", map.name, quoted_text(written));
  return fmt::format("unknown key {} in {}", quoted_text(written), map.name);
}

std::string missing_words(const MapSpec& map, const KeySpec& key) {
  if (map.voice == Voice::by_key) return fmt::format("'{}' is missing", key.name);
  return fmt::format("{} needs '{}'", map.name, key.name);
}

std::string misplaced_words(const MapSpec& map, const KeySpec& key) {
  if (map.voice == Voice::by_key) return fmt::format("'{}' is a key for {} only", key.name, key.of);
  return fmt::format("'{}' belongs to {}", key.name, key.of);
}

}  // namespace linewright
