#pragma once
// Typed access to the maps of a project file. Every fault becomes an error at its place and
// reading goes on: a number that could not be read stands as NaN and a name as an empty text, so
// that no later check finds fault with the same place again. A project with errors is never used.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "input/project_draft.hpp"
#include "input/yaml_document.hpp"

namespace linewright {

inline constexpr double largest_length_in = 10'000;
/// Closer than this is the same place; thinner than this is no thickness.
inline constexpr double smallest_length_in = 1e-6;

/// For a size that no such thing has.
inline constexpr std::string_view units_suggestion = "are the units right?";

enum class Sign { any, not_negative, positive };

/// No pulley's groove or swaged terminal's grip in a light aeroplane is larger
/// [common practice, no source].
inline constexpr double largest_groove_in = 24;
inline constexpr double largest_grip_in = 6;

/// What a number must be, and the words for it in a message: "a bend radius". A length beyond a
/// bound of its own is met with doubt of its unit.
struct NumberSpec {
  std::string_view words;
  Dimension dimension = Dimension::length;
  Sign sign = Sign::positive;
  double largest = largest_length_in;  ///< of its magnitude, in the internal unit
  std::string_view unit = "in";        ///< of `largest`, for the message
};

/// A word of the file and the value it stands for.
template <typename Value>
struct Choice {
  std::string_view word;
  Value value;
};

/// What a node is, for "found …": "nothing", "'text'", "a list", "a map".
std::string found_words(const YamlNode& node);

/// The number, or NaN after an error.
double read_number(const YamlNode& node, const NumberSpec& spec, ReadContext& context);
/// One line of text that is not blank, or an empty text after an error. `words`: "a name".
std::string read_text(const YamlNode& node, std::string_view words, ReadContext& context);
/// Index of the word in `known`, or nothing after an error. `words`: "a node kind".
std::optional<std::size_t> read_word(const YamlNode& node, std::string_view words,
                                     const std::vector<std::string>& known, ReadContext& context);
/// FS, BL, WL as lengths.
Vec3 read_place(const YamlNode& node, ReadContext& context);
/// Two lengths in a plane.
Vec2 read_plane_point(const YamlNode& node, ReadContext& context);
/// Two numbers of one kind, such as the ends of a range. `list_words`: "two angles [from, to]".
std::array<double, 2> read_pair(const YamlNode& node, const NumberSpec& spec,
                                std::string_view list_words, ReadContext& context);
/// The sequence's items, or nothing after an error.
const std::vector<YamlNode>& read_items(const YamlNode& node, ReadContext& context);

/// One map. Unknown keys are reported at once; absent ones when they are asked for.
class FieldReader {
 public:
  /// `what` names the map in messages: "a route".
  FieldReader(const YamlNode& node, std::string_view what, ReadContext& context,
              std::vector<std::string> keys);

  /// True where an unknown key holds a list or a map: names may be given in it that are not read.
  bool may_hide_names() const { return may_hide_names_; }
  /// Place of the key's value, or of the map where the key is absent.
  const SourceLocation& where_of(std::string_view key) const;
  /// True when the map has the key.
  bool has(std::string_view key) const { return find(key) != nullptr; }

  /// The key's value, or nullptr.
  const YamlNode* find(std::string_view key) const { return node_.find(key); }
  /// The same; its absence is an error.
  const YamlNode* require(std::string_view key);

  double number(std::string_view key, const NumberSpec& spec);
  std::optional<double> optional_number(std::string_view key, const NumberSpec& spec);
  std::string text(std::string_view key, std::string_view words);
  std::string optional_text(std::string_view key, std::string_view words);
  std::optional<bool> optional_flag(std::string_view key);
  Vec3 place(std::string_view key);
  /// A direction in space: three plain numbers, not all zero.
  Vec3 direction(std::string_view key);
  std::vector<Vec3> places(std::string_view key);
  std::vector<Vec2> plane_points(std::string_view key);
  /// Items of a list; none where the key is absent.
  const std::vector<YamlNode>& items(std::string_view key);

  /// Reads the map's own `name` and records that it is given here.
  std::string give_name(Named kind);
  /// Reads a name that must be given elsewhere, and records its use.
  std::string use_name(std::string_view key, Named kind);
  std::string optional_use_name(std::string_view key, Named kind);

  template <typename Value, std::size_t Count>
  std::optional<Value> choice(std::string_view key, std::string_view words,
                              const std::array<Choice<Value>, Count>& choices) {
    require(key);
    return optional_choice(key, words, choices);
  }

  template <typename Value, std::size_t Count>
  std::optional<Value> optional_choice(std::string_view key, std::string_view words,
                                       const std::array<Choice<Value>, Count>& choices) {
    const YamlNode* node = find(key);
    if (node == nullptr) return std::nullopt;
    std::vector<std::string> known;
    for (const Choice<Value>& choice : choices) known.emplace_back(choice.word);
    const auto index = read_word(*node, words, known, context_);
    if (!index) return std::nullopt;
    return choices[*index].value;
  }

 private:
  const YamlNode& node_;
  std::string_view what_;
  ReadContext& context_;
  bool may_hide_names_ = false;
};

}  // namespace linewright
