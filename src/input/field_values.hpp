#pragma once
// The values of a map, one function a kind. Every fault becomes an error at its place and reading
// goes on: a number that could not be read stands as NaN and a name as an empty text, so that no
// later check finds fault with the same place again. What has errors is never used.

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "input/error_list.hpp"
#include "input/key_spec.hpp"
#include "input/yaml_document.hpp"
#include "model/expected.hpp"
#include "model/vector.hpp"

namespace linewright {

/// Why a node is not the number that is asked for.
struct NumberFault {
  enum class Kind {
    unreadable,    ///< `words` are the whole sentence
    quoted,        ///< it stands in quotes
    out_of_range,  ///< `words` say what such a number must be
    slip,          ///< the same, of one that needs not be repeated
  };
  Kind kind = Kind::unreadable;
  std::string words;
  std::string suggestion;
};

/// True where a quoted text may be a length all the same: the marks of feet and inches are YAML's
/// quotes, so that a length which begins with one, or is kept from being taken for one, stands in
/// quotes.
bool holds_tape_marks(const YamlNode& node, Dimension dimension);

Expected<double, NumberFault> number_in(const YamlNode& node, const NumberSpec& spec,
                                        BareLength bare);

/// The number, or NaN after an error.
double read_number(const YamlNode& node, const NumberSpec& spec, ValueContext& context);

/// True for a scalar that is not blank.
bool has_text(const YamlNode& node);

/// One line of text that is not blank, or an empty text after an error. `words`: "a name".
std::string read_text(const YamlNode& node, std::string_view words, ValueContext& context);

/// Index of the word in `known`, or nothing after an error. `words`: "a node kind".
std::optional<std::size_t> read_word(const YamlNode& node, std::string_view words,
                                     std::span<const std::string_view> known,
                                     ValueContext& context);

/// FS, BL, WL as lengths.
Vec3 read_place(const YamlNode& node, ValueContext& context);
/// Two lengths in a plane.
Vec2 read_plane_point(const YamlNode& node, ValueContext& context);
/// Three plain numbers.
Vec3 read_direction(const YamlNode& node, ValueContext& context);
/// Two numbers of one kind, such as the ends of a range. `list_words`: "two angles [from, to]".
std::array<double, 2> read_pair(const YamlNode& node, const NumberSpec& spec,
                                std::string_view list_words, ValueContext& context);

/// The sequence's items, or nothing after an error.
const std::vector<YamlNode>& read_items(const YamlNode& node, ValueContext& context);

/// What is read of what is not there.
const std::vector<YamlNode>& no_items();

}  // namespace linewright
