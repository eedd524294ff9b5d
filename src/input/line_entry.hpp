#pragma once
// One catalogue entry from YAML: the built-in tables and a project's own `lines` share this reader.
//
// A project's entry:
//
//   lines:
//     - {name: tube-special-1/4, kind: plastic-tube, material: nylon, outside: 0.25, inside: 0.17,
//        minimum_bend_radius: 0.9, support_spacing: 12, weight: 0.0012 lb/in,
//        youngs_modulus: 60000 psi, expansion: 5e-5, slack: 0.006,
//        source: "maker's data sheet, 2026"}
//
// input/keys/line_keys.hpp has the keys. What an entry leaves out is not known. A built-in entry
// has two things more: a `mark` beside its `source`, and values that may state their own, as
// {value: 0.5625, source: …, mark: …}.

#include <vector>

#include "input/diagnostic.hpp"
#include "input/quantity.hpp"
#include "input/yaml_document.hpp"
#include "model/expected.hpp"
#include "model/line.hpp"

namespace linewright {

/// Reads one line, or says what is wrong with it. A project's entry (`built_in` false) needs a
/// `source`, which marks all its values as the builder's.
Expected<Line, std::vector<Diagnostic>> read_line_entry(const YamlNode& node, BareLength bare,
                                                        bool built_in);

}  // namespace linewright
