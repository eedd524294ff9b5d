#pragma once
// Tables of the keys that a map of the project file may have. What is read, what is refused and
// what is told of a key all follow from its row; the tables are in input/keys, and input/keys.hpp
// lists them.

#include <array>
#include <cstddef>
#include <span>
#include <string_view>

#include "input/named.hpp"
#include "input/quantity.hpp"

namespace linewright {

inline constexpr double largest_length_in = 10'000;
/// Closer than this is the same place; thinner than this is no thickness.
inline constexpr double smallest_length_in = 1e-6;

enum class Sign { any, not_negative, positive };

/// What a number must be, and the words for it in a message: "a bend radius". A length beyond a
/// bound of its own is met with doubt of its unit. Bounds are in the unit of a bare number where
/// bare lengths are inches.
struct NumberSpec {
  std::string_view words = {};
  Dimension dimension = Dimension::length;
  Sign sign = Sign::positive;
  double largest = largest_length_in;  ///< of its magnitude
  double smallest = 0;                 ///< what is less is a slip
  bool whole = false;
  /// Said of any number out of range, with `largest` for {}; empty: what is wrong with this one.
  std::string_view range = {};
};

/// A word of the file and the value it stands for.
template <typename Value>
struct Choice {
  std::string_view word;
  Value value;
};

/// The words alone, for a table.
template <typename Value, std::size_t Count>
constexpr std::array<std::string_view, Count> words_of(
    const std::array<Choice<Value>, Count>& choices) {
  std::array<std::string_view, Count> words;
  for (std::size_t i = 0; i < Count; ++i) words[i] = choices[i].word;
  return words;
}

enum class KeyKind {
  number,        ///< a quantity
  pair,          ///< a list of two quantities, the ends of a range
  numbers,       ///< a list of quantities
  flag,          ///< true or false
  text,          ///< words
  texts,         ///< a list of them
  word,          ///< one of the key's choices
  own_name,      ///< the name that the map gives
  name,          ///< a name that another map gives
  names,         ///< a list of them
  place,         ///< a list of three lengths [FS, BL, WL]
  places,        ///< a list of places
  pins,          ///< a list of places, or of nodes that are there
  plane_point,   ///< a list of two lengths
  plane_points,  ///< a list of plane points
  direction,     ///< a list of three plain numbers, not all zero
  system,        ///< one of the key's choices, with a name where there are two of a kind
  map,
  maps,        ///< a list of maps
  named_maps,  ///< a map of maps, each under a name of its own
};

/// Whether a map must have a key; `sometimes`: as its other keys have it, which `says` tells.
enum class Need { always, sometimes, never };

struct MapSpec;

struct KeySpec {
  std::string_view name;
  KeyKind kind = KeyKind::text;
  Need need = Need::never;
  std::string_view says;                           ///< what it tells of the map, in one line
  std::string_view of = {};                        ///< what alone has it: "a pulley"; empty: all
  std::string_view words = {};                     ///< the value in messages: "a hold"
  NumberSpec number = {};                          ///< of a number, and of each of several
  std::span<const std::string_view> choices = {};  ///< of a word and a system
  Named named = Named::part;                       ///< what its name or names stand for
  const MapSpec* map = nullptr;                    ///< of the map, or of each in a list
};

/// How a map's errors call a value: "a bend radius must be …", or "minimum_bend_radius: must be …".
enum class Voice { by_thing, by_key };

struct MapSpec {
  std::string_view name;  ///< in messages: "a route"
  std::span<const KeySpec> keys;
  Voice voice = Voice::by_thing;

  /// The key's row, or nullptr.
  constexpr const KeySpec* find(std::string_view key) const {
    for (const KeySpec& each : keys)
      if (each.name == key) return &each;
    return nullptr;
  }
};

// Rows of a table, one function a kind.

constexpr KeySpec number_key(std::string_view name, Need need, const NumberSpec& number,
                             std::string_view says, std::string_view of = {}) {
  return {name, KeyKind::number, need, says, of, number.words, number};
}

/// `words`: "two angles [from, to]".
constexpr KeySpec pair_key(std::string_view name, Need need, std::string_view words,
                           const NumberSpec& number, std::string_view says) {
  return {name, KeyKind::pair, need, says, {}, words, number};
}

constexpr KeySpec numbers_key(std::string_view name, Need need, const NumberSpec& number,
                              std::string_view says) {
  return {name, KeyKind::numbers, need, says, {}, number.words, number};
}

constexpr KeySpec text_key(std::string_view name, Need need, std::string_view words,
                           std::string_view says, std::string_view of = {}) {
  return {name, KeyKind::text, need, says, of, words};
}

constexpr KeySpec word_key(std::string_view name, Need need, std::string_view words,
                           std::span<const std::string_view> choices, std::string_view says,
                           std::string_view of = {}) {
  return {name, KeyKind::word, need, says, of, words, {}, choices};
}

constexpr KeySpec own_name_key(Named named, std::string_view says) {
  return {"name", KeyKind::own_name, Need::always, says, {}, "a name", {}, {}, named};
}

/// A name, or names, that other maps give.
constexpr KeySpec name_key(std::string_view name, KeyKind kind, Need need, Named named,
                           std::string_view says, std::string_view of = {}) {
  return {name, kind, need, says, of, {}, {}, {}, named};
}

/// A map, or maps.
constexpr KeySpec map_key(std::string_view name, KeyKind kind, Need need, const MapSpec& map,
                          std::string_view says, std::string_view of = {}) {
  return {name, kind, need, says, of, {}, {}, {}, {}, &map};
}

constexpr KeySpec system_key(std::string_view name, Need need, std::string_view words,
                             std::span<const std::string_view> choices, std::string_view says) {
  return {name, KeyKind::system, need, says, {}, words, {}, choices};
}

/// Where the kind says all that there is to say.
constexpr KeySpec plain_key(std::string_view name, KeyKind kind, Need need, std::string_view says,
                            std::string_view of = {}) {
  return {name, kind, need, says, of};
}

/// Tables one after another.
template <std::size_t... Counts>
constexpr auto joined(const std::array<KeySpec, Counts>&... tables) {
  std::array<KeySpec, (Counts + ...)> all;
  std::size_t filled = 0;
  const auto append = [&](const auto& table) {
    for (const KeySpec& key : table) all[filled++] = key;
  };
  (append(tables), ...);
  return all;
}

}  // namespace linewright
