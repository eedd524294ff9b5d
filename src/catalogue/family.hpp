#pragma once
// A family of a catalogue table, spread out: one full entry for each row and wall.

#include <string_view>
#include <vector>

#include "input/yaml_document.hpp"

namespace linewright {

/// The entries of one family, in the keys that `read_line_entry` or `read_fitting_entry` reads,
/// each value with the source it rests on. Throws std::logic_error naming the place where the table
/// is malformed.
std::vector<YamlNode> entries_of_family(const YamlNode& family);

/// The value of a key that a table must have. Throws std::logic_error where it has none.
const YamlNode& wanted(const YamlNode& map, std::string_view key);

/// A plain number of a table. Throws std::logic_error where it is none.
double table_number(const YamlNode& node);

/// Throws std::logic_error that names a place in a table and what is wrong there.
[[noreturn]] void refuse_table(const SourceLocation& where, std::string_view what);

}  // namespace linewright
