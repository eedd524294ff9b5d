#pragma once
// A cable over pulleys given by their centres: the corners of the taut path round them.
// Inches, radians.

#include <optional>
#include <vector>

#include "geometry/centreline.hpp"

namespace linewright {

/// A pulley by its groove. A cable that follows the route turns about `axis` by the right-hand
/// rule: with the thumb along it, the fingers point the way the cable goes. The other sign puts
/// the cable on the other side of the pulley; a route written from its other end needs it turned.
struct WrapCircle {
  Vec3 centre;
  double radius_in = 0;  ///< of the groove, which is the cable's centre line
  Vec3 axis;             ///< unit vector
};

/// A place of a route as given: a corner of the path, or a pulley by its centre.
struct GivenPlace {
  PathCorner corner;
  std::optional<WrapCircle> pulley;
};

/// Why no taut path goes round a pulley.
enum class WrapFault {
  no_tangent,  ///< a neighbour lies inside the groove, seen along the axis, or the grooves overlap
  half_turn,   ///< it would wrap half a turn or more, or does not bear on the pulley at all
};

struct WrappedPath {
  std::vector<PathCorner> corners;               ///< one for each place
  std::vector<std::optional<WrapFault>> faults;  ///< one for each place
};

/// The largest wrap that one corner is drawn for: 179 degrees, a degree short of where its legs no
/// longer meet.
inline constexpr double largest_wrap_rad = 179 * 3.14159265358979323846 / 180;

/// Turns places into corners whose filleted centreline is the taut path: straights tangent to the
/// grooves, open or crossed as the axes say, and the arcs between them. Exact where the legs lie
/// in the pulleys' planes. A leg out of a pulley's plane is taken square onto it to find where it
/// meets the groove; the arc then lies in the plane of its two legs. A pulley that cannot be
/// reached is a sharp corner at its centre, and the rest of the path goes on from there. The first
/// and last place must be corners.
WrappedPath wrap_pulleys(const std::vector<GivenPlace>& places);

}  // namespace linewright
