#pragma once
// Where a line goes through a surface of a mesh.

#include <vector>

#include "lines/prepared.hpp"

namespace linewright {

struct MeshCrossing {
  double distance_in = 0;  ///< along the route, of the first piercing
  Obstacle obstacle;       ///< the triangle that is pierced there
};

/// Piercings of one mesh nearer to each other along the line than this are one crossing: both faces
/// of a sheet, or a flange on a web [common practice, no source].
inline constexpr double one_crossing_in = 1.0;

/// In order along the route, mesh by mesh. Left out are what an end of the route is mounted on,
/// near that end, and the web of a described frame where the route passes it: `frame-crossing`
/// judges that one by its holes.
std::vector<MeshCrossing> mesh_crossings(const PreparedProject& prepared,
                                         const PreparedRoute& route);

}  // namespace linewright
