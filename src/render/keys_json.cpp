#include "render/keys_json.hpp"

#include "render/json_values.hpp"
#include "render/rules_json.hpp"

namespace linewright {

namespace {

Json key_json(const KeyPlace& place) {
  return {{"name", place.key->name},
          {"map", place.map->name},
          {"in", place_of_map(*place.map)},
          {"says", place.key->says},
          {"value", key_value_words(*place.key)},
          {"needed", need_word(place.key->need)},
          {"only_of", place.key->of}};
}

}  // namespace

std::string manual_json(const Rule* rule, const std::vector<KeyPlace>& places) {
  Json manual = {{"linewright", json_header()}};
  if (rule != nullptr) manual["rule"] = rule_manual(*rule);
  if (!places.empty()) {
    Json keys = Json::array();
    for (const KeyPlace& place : places) keys.push_back(key_json(place));
    manual["keys"] = std::move(keys);
  }
  return json_text(manual);
}

}  // namespace linewright
