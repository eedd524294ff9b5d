#pragma once
// An invented tailcone as triangles, and the segments of routes through it, for measuring.

#include <array>
#include <cstddef>
#include <vector>

#include "geometry/distance.hpp"

namespace linewright::bench {

/// A tapered skin with an inner and an outer face, frames with lightening holes and flanges, hat
/// stringers and clips, with slivers where holes are meshed. Corners are rounded to 32-bit floats,
/// as a file would hold them, and are not joined. Gives about `wanted` triangles, to 15 %.
std::vector<Triangle3> tailcone(std::size_t wanted);
/// The same as numbers of a file: three corners a triangle.
std::vector<std::array<float, 9>> tailcone_corners(std::size_t wanted);

/// A place in the tailcone: FS, angle from straight up, and depth below the outer face.
Vec3 inside_tailcone(double station, double angle, double inward);

/// Segments of `routes` lines through the tailcone, `per_route` of each line one after the other:
/// of ten lines six run along the cone, three around a bay and one wanders freely and may pierce.
std::vector<Segment3> route_segments(std::size_t routes, std::size_t per_route);

}  // namespace linewright::bench
