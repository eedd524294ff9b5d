#include "render/keys_text.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "input/field_words.hpp"
#include "input/keys.hpp"
#include "render/layout.hpp"

namespace linewright {

namespace {

std::string range_words(const NumberSpec& number) {
  constexpr std::string_view said_of_a_wrong_one = "must be ";
  if (!number.range.empty()) {
    const std::string range = fmt::format(fmt::runtime(number.range), number.largest);
    return range.starts_with(said_of_a_wrong_one) ? range.substr(said_of_a_wrong_one.size())
                                                  : range;
  }
  const std::string_view unit = internal_unit(number.dimension);
  const auto bound = [&](double value) {
    return fmt::format("{}{}{}", value, unit.empty() ? "" : " ", unit);
  };
  std::string words = number.whole ? "a whole number, " : "";
  if (number.sign == Sign::positive) words += "greater than zero, ";
  if (number.sign == Sign::not_negative) words += "not less than zero, ";
  if (number.smallest > 0) words += fmt::format("not less than {}, ", bound(number.smallest));
  return words + fmt::format("not beyond {}", bound(number.largest));
}

std::string number_words(const NumberSpec& number) {
  return fmt::format("{}, {}", quantity_words(number.dimension), range_words(number));
}

std::string label(std::string_view name, std::string_view text) {
  if (text.empty()) return {};
  return wrapped(left(fmt::format("    {}:", name), 13), text);
}

}  // namespace

std::vector<KeyPlace> places_of_key(std::string_view name) {
  std::vector<KeyPlace> places;
  for (const MapSpec* map : all_maps())
    if (const KeySpec* key = map->find(name)) places.push_back({map, key});
  return places;
}

std::vector<KeyPlace> places_of_all_keys() {
  std::vector<KeyPlace> places;
  for (const MapSpec* map : all_maps())
    for (const KeySpec& key : map->keys) places.push_back({map, &key});
  return places;
}

std::vector<std::string> key_names() {
  std::vector<std::string> names;
  for (const MapSpec* map : all_maps())
    for (const KeySpec& key : map->keys)
      if (std::find(names.begin(), names.end(), key.name) == names.end())
        names.emplace_back(key.name);
  return names;
}

std::string place_of_map(const MapSpec& map) {
  std::string places;
  for (const MapSpec* holder : all_maps())
    for (const KeySpec& key : holder->keys)
      if (key.map != nullptr && key.map->name == map.name)
        places += fmt::format("{}`{}` of {}", places.empty() ? "" : ", ", key.name, holder->name);
  return places;
}

std::string key_value_words(const KeySpec& key) {
  switch (key.kind) {
    case KeyKind::number:
      return number_words(key.number);
    case KeyKind::pair:
      return fmt::format("{}, each {}", key.words, number_words(key.number));
    case KeyKind::numbers:
      return "a list, each " + number_words(key.number);
    case KeyKind::flag:
      return "true or false";
    case KeyKind::text:
      return "words";
    case KeyKind::texts:
      return "a list of words";
    case KeyKind::word:
      return fmt::format("one of {}", fmt::join(key.choices, ", "));
    case KeyKind::own_name:
      return fmt::format("the name that it gives to the {}", kind_word(key.named));
    case KeyKind::name:
      return fmt::format("the name of a {}", kind_word(key.named));
    case KeyKind::names:
      return fmt::format("a list of names of {}s", kind_word(key.named));
    case KeyKind::place:
      return "a list of three lengths [FS, BL, WL]";
    case KeyKind::pins:
      return "a list of places, each [FS, BL, WL] or the name of a node";
    case KeyKind::places:
      return "a list of places, each [FS, BL, WL]";
    case KeyKind::plane_point:
      return "a list of two lengths";
    case KeyKind::plane_points:
      return "a list of points, each a list of two lengths";
    case KeyKind::direction:
      return "a direction: a list of three plain numbers, not all zero";
    case KeyKind::system:
      return fmt::format("one of {}, or a map of the one with a name: '{{{}: left}}'",
                         fmt::join(key.choices, ", "), key.choices.front());
    case KeyKind::map:
      return "a map; " + keys_words(*key.map);
    case KeyKind::maps:
      return "a list of maps; " + keys_words(*key.map);
    case KeyKind::named_maps:
      return "maps, each under a name; " + keys_words(*key.map);
  }
  return {};
}

std::string_view need_word(Need need) {
  switch (need) {
    case Need::always:
      return "yes";
    case Need::sometimes:
      return "sometimes";
    case Need::never:
      break;
  }
  return "no";
}

std::string key_manual_text(std::string_view name, const std::vector<KeyPlace>& places) {
  std::string text = wrapped("", fmt::format("{}: a key of project files", name));
  for (const KeyPlace& place : places) {
    const std::string in = place_of_map(*place.map);
    text += "\n" + wrapped("  ", fmt::format("In {}{}", place.map->name,
                                             in.empty() ? std::string() : " (" + in + ")"));
    text += label("says", place.key->says);
    text += label("value", key_value_words(*place.key));
    text += label("needed", need_word(place.key->need));
    text += label("only of", place.key->of);
  }
  return text;
}

}  // namespace linewright
