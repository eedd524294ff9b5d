#pragma once
// Keys of project files, told from the tables by which they are read.

#include <string>
#include <string_view>
#include <vector>

#include "input/key_spec.hpp"

namespace linewright {

/// A key in one map that may have it.
struct KeyPlace {
  const MapSpec* map = nullptr;
  const KeySpec* key = nullptr;
};

/// Every map that has the key, in the order of `all_maps`.
std::vector<KeyPlace> places_of_key(std::string_view name);

/// Every key of every map.
std::vector<KeyPlace> places_of_all_keys();

/// All keys, each once.
std::vector<std::string> key_names();

/// Where the map stands: "points of a route"; empty for the project file itself.
std::string place_of_map(const MapSpec& map);
/// What is written after the key: "a length (in, ft, mm, cm or m), greater than zero".
std::string key_value_words(const KeySpec& key);
/// "yes", "no", or "sometimes".
std::string_view need_word(Need need);

/// What the key says in each map, its value, and whether it is needed.
std::string key_manual_text(std::string_view name, const std::vector<KeyPlace>& places);

}  // namespace linewright
