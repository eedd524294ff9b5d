#pragma once
// How much room there is about each place of a grid: the distance to the nearest structure.

#include <set>
#include <string>
#include <vector>

#include "lines/access/cell_grid.hpp"
#include "lines/access/opening_shape.hpp"

namespace linewright {

/// Which closure each part goes on with, and the openings that are cut into it.
struct CoveredPart {
  std::set<std::string> closures;             ///< empty: it is always there
  std::vector<const OpeningShape*> openings;  ///< of its closures; where it has none, of all
};

/// One of each of the obstacles' parts. A closure covers what it names and the panels that name it.
std::vector<CoveredPart> covered_parts(const PreparedProject& prepared,
                                       const std::vector<OpeningShape>& openings);

/// True where an opening is cut into the part at the place on it.
bool is_cut_out(const CoveredPart& covered, Vec3 on_part);

/// True for what can stand in the way of an arm. Movers can be turned aside, and pulleys
/// and fittings are small.
bool stands_in_the_way(const Part& part);

/// The least distance from a place to a part, its openings cut out; `limit_in` where it is more.
/// Frames are exact; of meshes nothing is said.
double part_distance_in(const PreparedProject& prepared, int part, const CoveredPart& covered,
                        Vec3 place, double limit_in);

/// Free distance about the middle of each cell, up to a limit.
struct Room {
  CellGrid grid;
  float limit_in = 0;
  std::vector<float> free_in;

  Room(const CellGrid& cells, double limit)
      : grid(cells),
        limit_in(static_cast<float>(limit)),
        free_in(cells.size(), static_cast<float>(limit)) {}

  /// Takes a part's place away. Meshes take the cells that their triangles come through, whole.
  void take(const PreparedProject& prepared, int part, const CoveredPart& covered);
};

}  // namespace linewright
