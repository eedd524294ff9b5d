#include "render/project_schema.hpp"

#include <fmt/format.h>

#include <cmath>

#include "input/keys.hpp"
#include "input/keys/project_keys.hpp"
#include "render/json_values.hpp"

namespace linewright {

namespace {

/// "hole-in-a-wall" of "a hole in a wall": a pointer to it needs no escapes.
std::string definition_name(const MapSpec& map) {
  std::string_view name = map.name;
  for (const std::string_view article : {"a ", "an ", "the "})
    if (name.starts_with(article)) {
      name.remove_prefix(article.size());
      break;
    }
  std::string id(name);
  for (char& each : id)
    if (each == ' ') each = '-';
  return id;
}

Json reference(const MapSpec& map) {
  return {{"$ref", "#/definitions/" + definition_name(map)}};
}

/// Words may look like a number or a flag: a line called 12.
Json scalar() {
  return {{"type", {"string", "number", "boolean"}}};
}

/// A bare number, or one with a unit. Only a bound that holds in every unit is a bound here.
Json quantity(const NumberSpec& number) {
  Json schema = {{"type", {number.whole ? "integer" : "number", "string"}}};
  if (number.dimension == Dimension::temperature) return schema;
  if (number.sign == Sign::positive) schema["exclusiveMinimum"] = 0;
  if (number.sign == Sign::not_negative) schema["minimum"] = 0;
  return schema;
}

Json list_of(Json items) {
  return {{"type", "array"}, {"items", std::move(items)}};
}

Json row_of(Json items, int count) {
  Json row = list_of(std::move(items));
  row["minItems"] = count;
  row["maxItems"] = count;
  return row;
}

Json coordinates(int count) {
  return row_of({{"type", {"number", "string"}}}, count);
}

Json one_of_words(std::span<const std::string_view> choices) {
  Json words = Json::array();
  for (const std::string_view choice : choices) words.push_back(choice);
  return {{"enum", std::move(words)}};
}

/// A kind, "kind: name", or the same as a map of one entry.
Json system_schema(std::span<const std::string_view> kinds) {
  std::string pattern;
  Json properties = Json::object();
  for (const std::string_view kind : kinds) {
    pattern += fmt::format("{}{}", pattern.empty() ? "" : "|", kind);
    properties[std::string(kind)] = scalar();
  }
  Json forms = Json::array();
  forms.push_back({{"type", "string"}, {"pattern", fmt::format("^ *({}) *(:.*)?$", pattern)}});
  forms.push_back({{"type", "object"},
                   {"properties", std::move(properties)},
                   {"additionalProperties", false},
                   {"minProperties", 1},
                   {"maxProperties", 1}});
  return {{"anyOf", std::move(forms)}};
}

Json value_schema(const KeySpec& key) {
  switch (key.kind) {
    case KeyKind::number:
      return quantity(key.number);
    case KeyKind::pair:
      return row_of(quantity(key.number), 2);
    case KeyKind::numbers:
      return list_of(quantity(key.number));
    case KeyKind::flag:
      return {{"type", "boolean"}};
    case KeyKind::text:
    case KeyKind::own_name:
    case KeyKind::name:
      return scalar();
    case KeyKind::texts:
    case KeyKind::names:
      return list_of(scalar());
    case KeyKind::word:
      return one_of_words(key.choices);
    case KeyKind::place:
    case KeyKind::direction:
      return coordinates(3);
    case KeyKind::places:
      return list_of(coordinates(3));
    case KeyKind::pins:
      return list_of({{"anyOf", {coordinates(3), {{"type", "string"}}}}});
    case KeyKind::plane_point:
      return coordinates(2);
    case KeyKind::plane_points:
      return list_of(coordinates(2));
    case KeyKind::system:
      return system_schema(key.choices);
    case KeyKind::map:
      return reference(*key.map);
    case KeyKind::maps:
      return list_of(reference(*key.map));
    case KeyKind::named_maps:
      return {{"type", "object"}, {"additionalProperties", reference(*key.map)}};
  }
  return {};
}

Json either(Json first, Json second) {
  Json forms = Json::array();
  forms.push_back(std::move(first));
  forms.push_back(std::move(second));
  return {{"anyOf", std::move(forms)}};
}

/// What may stand in place of a value, for the loader to work it out.
Json with_references(const MapSpec& map, const KeySpec& key) {
  Json schema = value_schema(key);
  if (&map == &hole_map && key.name == "centre")
    return either(std::move(schema), {{"type", "object"},
                                      {"properties", {{"on", scalar()}}},
                                      {"additionalProperties", false},
                                      {"required", Json::array({"on"})}});
  if (&map == &panel_map && key.name == "corners")
    return either(std::move(schema),
                  list_of({{"type", {"integer", "string"}}}));  // of the outlines it is over
  return schema;
}

/// In draft 7 nothing counts beside a "$ref", so it stands within.
Json described(const MapSpec& map, const KeySpec& key) {
  Json schema = with_references(map, key);
  if (schema.contains("$ref")) schema = {{"allOf", Json::array({schema})}};
  schema["description"] =
      key.of.empty() ? std::string(key.says) : fmt::format("of {}: {}", key.of, key.says);
  return schema;
}

Json definition(const MapSpec& map) {
  Json properties = Json::object();
  Json required = Json::array();
  for (const KeySpec& key : map.keys) {
    properties[std::string(key.name)] = described(map, key);
    // A file that another one includes has no name.
    if (key.need == Need::always && (&map != &project_map || key.name != "name"))
      required.push_back(key.name);
  }
  Json schema = {{"title", map.name},
                 {"type", "object"},
                 {"properties", std::move(properties)},
                 {"additionalProperties", false}};
  if (!required.empty()) schema["required"] = std::move(required);
  if (&map == &project_map)
    for (const KeySpec& key : settings_keys)
      if (key.name != "name") schema["dependencies"][std::string(key.name)] = Json::array({"name"});
  return schema;
}

}  // namespace

std::string project_schema() {
  Json definitions = Json::object();
  for (const MapSpec* map : all_maps()) definitions[definition_name(*map)] = definition(*map);
  return json_text({{"$schema", "http://json-schema.org/draft-07/schema#"},
                    {"title", "Linewright project file"},
                    {"allOf", Json::array({reference(project_map)})},
                    {"definitions", std::move(definitions)}});
}

}  // namespace linewright
