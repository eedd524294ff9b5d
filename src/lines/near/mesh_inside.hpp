#pragma once
// Lines that run inside of a mesh, as in a skin.

#include "lines/prepared.hpp"

namespace linewright {

/// True where a place is inside of the mesh's surface, seen along all three axes:
/// an odd number of its faces lies to one side. A surface with openings may hide that; one that
/// crosses itself may feign it. The rays lie a little off the place.
bool is_inside(const MeshField& mesh, Vec3 place);
/// What of a route is asked whether it is.
Vec3 middle_of(const PreparedRoute& route);

}  // namespace linewright
