#pragma once
// Maps from a table of comma-separated values: a key a column, a map a row.

#include <optional>
#include <string>
#include <string_view>

#include "input/error_list.hpp"
#include "input/key_spec.hpp"
#include "input/yaml_document.hpp"

namespace linewright {

/// The rows below the first, which names the columns, as maps with the keys of `map`. Columns `fs`,
/// `bl` and `wl` give the place under `place_key`, in the order of `axes`. Blank cells are keys
/// that the row leaves out; blank rows and rows that begin with # are passed over. A cell may stand
/// in double quotes, a doubled one within it for one. A direction is three numbers with blanks
/// between them. Faults are errors with their place in the table. Nothing where the table as a
/// whole cannot be read.
std::optional<std::vector<YamlNode>> table_rows(std::string_view text, const std::string& file_name,
                                                const MapSpec& map, std::string_view place_key,
                                                const std::vector<std::string>& axes,
                                                ErrorList& errors);

}  // namespace linewright
