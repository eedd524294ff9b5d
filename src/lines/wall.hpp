#pragma once
// Walls that are no frames and have a hole: of a channel, a panel or a board.

#include <deque>
#include <string>
#include <vector>

#include "geometry/structure/obstacles.hpp"
#include "model/project.hpp"

namespace linewright {

/// A wall round one hole, drawn as a frame in its middle plane, the middle of the hole at the
/// plane's origin.
struct Wall {
  Frame frame;           ///< by the part's name, with the one hole
  int part = 0;          ///< index into Obstacles::parts
  bool implied = false;  ///< no hole is described: a guide that stands there says that there is one
  double guide_bore_in = 0;         ///< where it is implied: of that guide
  bool is_board = false;            ///< a box: all of it is round the hole
  const Hole* runs_into = nullptr;  ///< another hole of the part that this one overlaps
  bool leaves_wall = false;         ///< the hole reaches past the wall's edge

  /// Of the hole, in the wall's middle plane.
  Vec3 middle() const { return frame.plane.origin; }
  const Hole& hole() const { return frame.holes.front(); }
};

/// A guide with a bore that names no hole stands in a wall when it is this near to its surface.
inline constexpr double stands_in_wall_in = 0.0625;

/// Walls keep their places in memory.
using Walls = std::deque<Wall>;

/// Those with a described hole, and those in which a grommet, bushing or fairlead of a route stands
/// that states its bore and names no hole: its hole is taken to be cut for it. Of several that
/// stand in one place the first counts. What `obstacles` does not have there has no wall.
Walls find_walls(const Project& project, const Obstacles& obstacles);

/// What was taken for the holes that no one described, a sentence for each.
std::vector<std::string> wall_assumptions(const Walls& walls);

}  // namespace linewright
