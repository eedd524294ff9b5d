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
//   key                         kinds             meaning
//   name, kind, source          all, required     kind: rigid-tube, plastic-tube, hose, cable, wire
//   outside                     all, required     nominal outside diameter
//   inside                      tubes and hoses,  bore, smaller than outside
//                               required
//   material                    all               a word
//   construction                cables            7x7, 7x19, 1x19
//   plus_tolerance              all               how much larger than nominal it may be; absent: 0
//   minimum_bend_radius         all               to the centreline
//   minimum_inside_bend_radius  all               in its stead: to the inside of the bend; half of
//                                                 the largest outside diameter is added to it
//   usual_bend_radius           all               to the centreline, where a point states no bend;
//                                                 absent: the minimum
//   support_spacing             all               largest distance between supports
//   weight                      all               per length
//   youngs_modulus              tubes and hoses   pressure
//   expansion                   all               per degree Fahrenheit, a plain number
//   slack                       all               surplus length as a fraction of length
//   breaking_strength           cables            force
//   axial_stiffness             cables            force: AE
//   cut_allowance               all               both ends together; absent: 1 in for tubes, 6 in
//                                                 for wires, none for hoses and cables (common
//                                                 practice)
//
// Any other key left out means "not known". A built-in entry has two things more: a `mark` beside
// its `source`, and values that may state their own, as {value: 0.5625, source: …, mark: …}.

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
