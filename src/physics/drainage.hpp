#pragma once
// Water left in pipework: what can run out through the outlets, and what stays. The pipework is a
// graph whose vertices have heights; water runs along it and never leaves it but at an outlet.
// Heights are of the bore's middle, all measured up from one level; lengths are inches.

#include <vector>

namespace linewright {

/// Pipe between two vertices, its height running straight from one to the other. It may rise by no
/// more than its length.
struct WaterReach {
  int from = 0;
  int to = 0;
  double length_in = 0;
  double bore_in = 0;
};

struct WaterNetwork {
  std::vector<double> height_in;    ///< of each vertex
  std::vector<WaterReach> reaches;  ///< loops and reaches side by side are allowed
  std::vector<int> outlets;         ///< vertices at which water runs out
};

/// How high water must rise to get out, for each vertex: over all ways to an outlet, the least of
/// their highest places.
struct SpillLevels {
  std::vector<double> level_in;  ///< infinite where no way leads out
  std::vector<int> crest;  ///< the vertex that is that highest place; -1 where no way leads out
};

SpillLevels spill_levels(const WaterNetwork& network);

/// Part of a reach under water, as fractions of the way from its `from` to its `to`.
struct WetPart {
  int reach = 0;
  double from = 0;
  double to = 1;
};

/// Water that cannot run out.
struct Pool {
  int lowest = 0;         ///< its lowest vertex; of several, the first
  int crest = -1;         ///< the vertex over which it spills; -1 where no way leads out
  double level_in = 0;    ///< height of its surface; infinite where no way leads out
  double depth_in = 0;    ///< from its lowest place up to its surface
  double volume_in3 = 0;  ///< of the bore below the surface
  double bore_in = 0;     ///< the narrowest bore at its lowest place
  /// The bore at the lowest place is full from bottom to top: the pool is at least as deep as the
  /// upright extent of the bore there, which is its diameter by the cosine of the flattest slope.
  bool closes_bore = false;
  std::vector<int> vertices;   ///< under water, in order
  std::vector<WetPart> parts;  ///< in order of reach
};

/// Pools shallower than this are rounding, not water.
inline constexpr double least_pool_depth_in = 1e-9;

/// Every pool, in order of its first vertex.
std::vector<Pool> standing_pools(const WaterNetwork& network);

}  // namespace linewright
