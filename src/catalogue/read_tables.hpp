#pragma once
// Catalogue tables to lines and clamps. A table is written for reading: a family states once what
// all its rows share, and each row is one size.
//
//   families:
//     - name: tube-aluminium-SIZE       # SIZE becomes the row's size
//       usual_wall: 0.035               # with a `walls` column: the wall of the name without one
//       every: {kind: rigid-tube, …}    # keys of a line entry that all rows share
//       density: {value: 0.097, source: …, mark: …}             # lb/in3: gives each row's weight
//       stretch_constant: {value: 0.000014, source: …, mark: …} # cables: gives the axial stiffness
//       sources: {support_spacing: {source: …, mark: …}}        # of a column, where it has its own
//       columns: [size, outside, walls, support_spacing]        # keys of a line entry, and `walls`
//                                                               # and `pounds_per_100_feet`
//       rows:
//         - [1/4, 0.2500, [0.028, 0.035], 13.5]                 # `~`: not listed
//   clamps: {source: …, mark: …, dashes: [2, 3]}

#include <vector>

#include "catalogue/embedded_tables.hpp"
#include "model/line.hpp"

namespace linewright {

/// All lines and clamps of the tables, in their order. Throws std::logic_error naming the table,
/// its line and the entry where one cannot be read or a name is used twice.
Catalogue read_tables(const std::vector<EmbeddedTable>& tables);

}  // namespace linewright
