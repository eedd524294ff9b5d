#pragma once
// One catalogue entry from YAML: the built-in tables and a project's own `lines` share this reader.

#include <optional>
#include <vector>

#include "input/diagnostic.hpp"
#include "input/quantity.hpp"
#include "input/yaml_document.hpp"
#include "model/line.hpp"

namespace linewright {

/// Reads one line; adds to `errors` what is wrong with it and returns nothing then. A project's
/// entry (`built_in` false) needs a `source`, which marks all its values as the builder's.
std::optional<Line> read_line_entry(const YamlNode& node, BareLength bare, bool built_in,
                                    std::vector<Diagnostic>& errors);

}  // namespace linewright
