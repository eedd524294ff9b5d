#pragma once
// Lines that run inside of a mesh, as in a skin.

#include "lines/prepared.hpp"

namespace linewright {

/// True where the middle of the route is inside of the mesh's surface, seen along all three axes:
/// an odd number of its faces lies to one side. A surface with openings may hide that; one that
/// crosses itself may feign it.
bool runs_inside(const PreparedRoute& route, const MeshPartField& mesh);

}  // namespace linewright
