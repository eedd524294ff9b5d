#pragma once
// A map read by its table, with the keys looked up when the program is compiled: to ask for a key
// that the table lacks or has as another kind, or to take one as optional that is needed, does not
// compile.

#include <algorithm>

#include "input/field_reader.hpp"

namespace linewright {

/// What a caller does where a key is absent.
enum class Asked { either, as_needed, as_optional };

/// A row of `map`, found by its name.
template <const MapSpec& map, Asked asked, KeyKind... kinds>
class KeyOf {
 public:
  consteval KeyOf(std::string_view name) {
    while (index_ < map.keys.size() && map.keys[index_].name != name) ++index_;
    if (index_ == map.keys.size()) throw "the map's table has no such key";
    const KeySpec& key = map.keys[index_];
    if (sizeof...(kinds) > 0 && !((key.kind == kinds) || ...)) throw "the key is of another kind";
    if (asked == Asked::as_needed && key.need == Need::never) throw "the key may be left out";
    if (asked == Asked::as_optional && key.need == Need::always) throw "the key is needed";
  }
  consteval KeyOf(const char* name) : KeyOf(std::string_view(name)) {}

  constexpr operator const KeySpec&() const { return map.keys[index_]; }
  constexpr const KeySpec* operator->() const { return &map.keys[index_]; }

 private:
  // No pointer: with the sanitizers GCC 12 compares none with nullptr while it compiles.
  std::size_t index_ = 0;
};

/// The same for a word, whose choices must be those of the table.
template <const MapSpec& map, Asked asked, const auto& choices>
class WordOf {
 public:
  consteval WordOf(const char* name) : key_(name) {
    const auto same = [](std::string_view word, const auto& choice) { return word == choice.word; };
    if (!std::equal(key_->choices.begin(), key_->choices.end(), choices.begin(), choices.end(),
                    same))
      throw "the key has other choices";
  }

  constexpr operator const KeySpec&() const { return key_; }

 private:
  KeyOf<map, asked, KeyKind::word> key_;
};

/// Words of rows of `map` on what alone has them.
template <const MapSpec& map>
class OwnerOf {
 public:
  consteval OwnerOf(std::string_view owner) : owner_(owner) {
    const auto has_owner = [&](const KeySpec& key) { return key.of == owner; };
    if (std::none_of(map.keys.begin(), map.keys.end(), has_owner))
      throw "no key of the map is only of that";
  }
  consteval OwnerOf(const char* owner) : OwnerOf(std::string_view(owner)) {}

  constexpr operator std::string_view() const { return owner_; }

 private:
  std::string_view owner_;
};

/// `FieldReader` has what each function does.
template <const MapSpec& map>
class MapReader : private FieldReader {
 public:
  using Key = KeyOf<map, Asked::either>;
  template <KeyKind... kinds>
  using Needed = KeyOf<map, Asked::as_needed, kinds...>;
  template <KeyKind... kinds>
  using Optional = KeyOf<map, Asked::as_optional, kinds...>;

  /// `known` has the table's keys and may have more.
  MapReader(const YamlNode& node, ValueContext& context, const MapSpec& known = map)
      : FieldReader(node, known, context) {}

  /// Where keys of several maps are read alike.
  FieldReader& fields() { return *this; }

  using FieldReader::may_hide_names;
  bool has(Key key) const { return FieldReader::has(key); }
  bool lacks(Key key) const { return FieldReader::lacks(key); }
  const YamlNode* find(Key key) const { return FieldReader::find(key); }
  const YamlNode* require(Needed<> key) { return FieldReader::require(key); }
  const SourceLocation& where_of(Key key) const { return FieldReader::where_of(key); }

  double number(Needed<KeyKind::number> key) { return FieldReader::number(key); }
  std::optional<double> optional_number(Optional<KeyKind::number> key) {
    return FieldReader::optional_number(key);
  }
  std::array<double, 2> pair(KeyOf<map, Asked::either, KeyKind::pair> key) {
    return FieldReader::pair(key);
  }
  std::string text(Needed<KeyKind::text> key) { return FieldReader::text(key); }
  std::string optional_text(Optional<KeyKind::text> key) { return FieldReader::optional_text(key); }
  std::optional<bool> optional_flag(Optional<KeyKind::flag> key) {
    return FieldReader::optional_flag(key);
  }
  Vec3 place(Needed<KeyKind::place> key) { return FieldReader::place(key); }
  std::optional<Vec3> optional_place(Optional<KeyKind::place> key) {
    return FieldReader::optional_place(key);
  }
  Vec2 plane_point(Needed<KeyKind::plane_point> key) { return FieldReader::plane_point(key); }
  Vec3 direction(Needed<KeyKind::direction> key) { return FieldReader::direction(key); }
  std::optional<Vec3> optional_direction(Optional<KeyKind::direction> key) {
    return FieldReader::optional_direction(key);
  }
  std::vector<Vec3> places(KeyOf<map, Asked::either, KeyKind::places, KeyKind::pins> key) {
    return FieldReader::places(key);
  }
  std::vector<Vec2> plane_points(KeyOf<map, Asked::either, KeyKind::plane_points> key) {
    return FieldReader::plane_points(key);
  }
  const std::vector<YamlNode>& items(
      KeyOf<map, Asked::either, KeyKind::maps, KeyKind::names, KeyKind::texts, KeyKind::numbers>
          key) {
    return FieldReader::items(key);
  }

  template <const auto& choices>
  auto word(WordOf<map, Asked::as_needed, choices> key) {
    return chosen<choices>(FieldReader::word(key));
  }
  template <const auto& choices>
  auto optional_word(WordOf<map, Asked::as_optional, choices> key) {
    return chosen<choices>(FieldReader::optional_word(key));
  }

  std::string own_name(ProjectDraft& draft) {
    constexpr Needed<KeyKind::own_name> key("name");
    return FieldReader::own_name(key, draft);
  }
  std::string name(Needed<KeyKind::name> key, ProjectDraft& draft) {
    return FieldReader::name(key, draft);
  }
  std::string optional_name(Optional<KeyKind::name> key, ProjectDraft& draft) {
    return FieldReader::optional_name(key, draft);
  }

  void refuse_keys_of(OwnerOf<map> owner) { FieldReader::refuse_keys_of(owner); }

 private:
  template <const auto& choices>
  static auto chosen(std::optional<std::size_t> index) {
    using Value = decltype(choices[0].value);
    return index ? std::optional<std::remove_cv_t<Value>>(choices[*index].value) : std::nullopt;
  }
};

}  // namespace linewright
