#pragma once
// One fitting from YAML: the built-in tables and a project's own `fittings` share this reader.
//
// A project's entry:
//
//   fittings:
//     - {name: push-elbow-1/4, kind: elbow-90, tube: 0.25, take_up: [0.71], body_diameter: 0.5,
//        insertion: 0.6, source: "measured"}
//
// input/keys/fitting_keys.hpp has the keys. A built-in entry states a `mark` beside its `source`,
// as in input/line_entry.hpp.

#include <vector>

#include "input/diagnostic.hpp"
#include "input/quantity.hpp"
#include "input/yaml_document.hpp"
#include "model/expected.hpp"
#include "model/fitting.hpp"

namespace linewright {

/// Reads one fitting, or says what is wrong with it. A project's entry (`built_in` false) needs a
/// `source`, which marks all its values as the builder's.
Expected<Fitting, std::vector<Diagnostic>> read_fitting_entry(const YamlNode& node, BareLength bare,
                                                              bool built_in);

}  // namespace linewright
