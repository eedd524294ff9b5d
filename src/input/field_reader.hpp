#pragma once
// Typed access to one map of a project file, by its table of keys.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "input/field_values.hpp"
#include "input/key_spec.hpp"
#include "input/project_draft.hpp"
#include "input/yaml_document.hpp"

namespace linewright {

/// One map. Unknown keys are reported at once; absent ones when they are asked for, where they are
/// needed. Keys are rows of the map's table and are read as their kind: see `MapReader`, which has
/// that checked by the compiler.
class FieldReader {
 public:
  FieldReader(const YamlNode& node, const MapSpec& map, ValueContext& context);

  /// True where an unknown key holds a list or a map: names may be given in it that are not read.
  bool may_hide_names() const { return may_hide_names_; }

  /// True when the map has the key.
  bool has(const KeySpec& key) const { return find(key) != nullptr; }
  /// True where it has neither the key nor one that was likely meant to be it.
  bool lacks(const KeySpec& key) const;
  /// The key's value, or nullptr.
  const YamlNode* find(const KeySpec& key) const;
  /// The same; its absence is an error.
  const YamlNode* require(const KeySpec& key);
  /// Place of the key's value, or of the map where the key is absent.
  const SourceLocation& where_of(const KeySpec& key) const;

  double number(const KeySpec& key);
  std::optional<double> optional_number(const KeySpec& key);
  /// The key's number from a node that stands elsewhere.
  double number_in_node(const KeySpec& key, const YamlNode& node);
  /// Both NaN after an error.
  std::array<double, 2> pair(const KeySpec& key);
  std::string text(const KeySpec& key);
  /// Empty where the map does not say.
  std::string optional_text(const KeySpec& key);
  std::optional<bool> optional_flag(const KeySpec& key);
  /// Index of the word among the key's choices.
  std::optional<std::size_t> word(const KeySpec& key);
  std::optional<std::size_t> optional_word(const KeySpec& key);
  Vec3 place(const KeySpec& key);
  std::optional<Vec3> optional_place(const KeySpec& key);
  Vec2 plane_point(const KeySpec& key);
  Vec3 direction(const KeySpec& key);
  std::optional<Vec3> optional_direction(const KeySpec& key);
  std::vector<Vec3> places(const KeySpec& key);
  std::vector<Vec2> plane_points(const KeySpec& key);
  /// What a list holds; nothing where the map does not say.
  const std::vector<YamlNode>& items(const KeySpec& key);

  /// Reads the map's own name and records that it is given here.
  std::string own_name(const KeySpec& key, ProjectDraft& draft);
  /// Reads a name that must be given elsewhere, and records its use.
  std::string name(const KeySpec& key, ProjectDraft& draft);
  std::string optional_name(const KeySpec& key, ProjectDraft& draft);

  /// Refuses the keys that only `owner` has: a key that would be passed over is an error.
  void refuse_keys_of(std::string_view owner);

 private:
  const YamlNode* value_of(const KeySpec& key);
  std::string text_in(const YamlNode& node, const KeySpec& key, std::string_view words);
  std::optional<std::size_t> word_in(const YamlNode& node, const KeySpec& key);
  Vec3 direction_in(const YamlNode& node, const KeySpec& key);
  void refuse_unknown_keys();

  const YamlNode& node_;
  const MapSpec& map_;
  ValueContext& context_;
  bool may_hide_names_ = false;
};

}  // namespace linewright
