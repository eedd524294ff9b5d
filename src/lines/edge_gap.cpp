#include "lines/edge_gap.hpp"

#include <algorithm>
#include <cmath>

#include "geometry/distance.hpp"
#include "geometry/minimise.hpp"
#include "geometry/plane/polygon.hpp"
#include "model/place_order.hpp"

namespace linewright {

namespace {

/// Keeps the nearer; of those as near, the one that lies before the other.
void take_nearer(EdgeGap& best, const EdgeGap& other, const PreparedRoute& route) {
  constexpr double as_near_in = 1e-6;
  if (other.distance_in > best.distance_in + as_near_in) return;
  if (other.distance_in < best.distance_in - as_near_in ||
      lies_before(route.centreline.at(other.along_in), route.centreline.at(best.along_in)))
    best = other;
}

/// Of a point seen in the frame's plane, from an edge that lies `above` it.
double to_circle(Vec3 point, double above, const Circle& circle) {
  const double across = distance(Vec2{point.y, point.z}, circle.centre);
  return std::hypot(point.x - above, across - circle.diameter_in / 2);
}

EdgeGap circle_gap(const PreparedRoute& route, const Crossing& crossing, const Circle& circle,
                   double above) {
  const DrawnPlane& plane = crossing.frame->plane;
  const double window = circle.diameter_in / 2 + crossing.frame->thickness_in;
  const double low = std::max(0.0, crossing.distance_in - window);
  const double high = std::min(route.length_in(), crossing.distance_in + window);
  // A place along the line moves no faster than the distance along it.
  const auto gap = [&](double along) {
    return to_circle(plane.placed(route.centreline.at(along)), above, circle);
  };
  Minimum least = minimise_bounded_slope(gap, low, high, 1.0, 1e-5);
  // Round about it there is no other dip: from here on it is found as exactly as numbers go.
  constexpr double beside_in = 0.01;
  const Minimum polished = minimise_convex(gap, std::max(low, least.at - beside_in),
                                           std::min(high, least.at + beside_in));
  if (polished.value < least.value) least = polished;
  const double straight_through = to_circle(plane.placed(crossing.at), above, circle);
  return straight_through <= least.value + 1e-5 ? EdgeGap{straight_through, crossing.distance_in}
                                                : EdgeGap{least.value, least.at};
}

EdgeGap polygon_gap(const PreparedRoute& route, const Crossing& crossing, double above) {
  const DrawnPlane& plane = crossing.frame->plane;
  const std::vector<Vec2> corners = edge_polygon(*crossing.hole, 0.0005);
  EdgeGap best{1e300, crossing.distance_in};
  double size = 0;
  for (const Vec2& corner : corners)
    size = std::max(size, distance(corner, crossing.in_plane(crossing.at)));
  const double window = size + crossing.frame->thickness_in;
  for (const PathChord& chord :
       route.centreline.chords(std::max(0.0, crossing.distance_in - window),
                               std::min(route.length_in(), crossing.distance_in + window))) {
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const Vec2 a = corners[i];
      const Vec2 b = corners[(i + 1) % corners.size()];
      const Nearest near = nearest(Segment3{plane.placed(chord.from), plane.placed(chord.to)},
                                   Segment3{{above, a.u, a.v}, {above, b.u, b.v}});
      const double along = distance(plane.placed(chord.from), near.on_first);
      take_nearer(best, {near.distance_in, chord.start_in + along}, route);
    }
  }
  return best;
}

}  // namespace

EdgeGap edge_gap(const PreparedRoute& route, const Crossing& crossing) {
  EdgeGap best{1e300, crossing.distance_in};
  for (const double side : {-0.5, 0.5}) {
    const double out_in = crossing.hole->edge_radius_in.value_or(0);
    const double above = side * (crossing.frame->thickness_in + 2 * out_in);
    const auto* circle = std::get_if<Circle>(&crossing.hole->shape);
    const EdgeGap gap =
        circle ? circle_gap(route, crossing, *circle, above) : polygon_gap(route, crossing, above);
    take_nearer(best, gap, route);
  }
  return best;
}

}  // namespace linewright
