#include "lines/edge_guard.hpp"

#include <cmath>

#include "geometry/plane/polygon.hpp"

namespace linewright {

namespace {

constexpr double rounding_in = 1e-6;

bool is_at(double distance_in, const Crossing& crossing) {
  return std::abs(distance_in - crossing.distance_in) <= point_at_hole_in + rounding_in;
}

/// True for a guide that names the hole, or stands in one that it implies.
bool names(const RoutePoint& guide, const Crossing& crossing) {
  if (!crossing.wall || !crossing.wall->implied) return guide.through == crossing.hole->name;
  return guide.through.empty() && covers(*crossing.hole, crossing.in_plane(guide.at));
}

bool bears(const RoutePoint& guide, const PreparedRoute& route) {
  return guide.hold != HoldKind::grommet || route.stays();
}

/// A bore that reaches past the edge lets the line through to it.
bool lies_in_hole(const RoutePoint& guide, const Crossing& crossing) {
  if (!guide.bore_in || fills_hole(&guide, *crossing.hole)) return true;
  const Vec2 middle = crossing.in_plane(guide.at);
  return covers(*crossing.hole, middle) &&
         edge_distance(*crossing.hole, middle) >= *guide.bore_in / 2 - rounding_in;
}

}  // namespace

bool guards_line(EdgeGuard guard, const PreparedRoute& route) {
  return guards(guard) && route.stays();
}

const RoutePoint* guide_in(const PreparedRoute& route, const Crossing& crossing) {
  const auto& points = route.route->points;
  for (std::size_t i = 0; i < points.size(); ++i)
    if (points[i].is_bored_guide() && names(points[i], crossing) &&
        is_at(route.point_distance_in[i], crossing))
      return &points[i];
  for (const FreePassage& passage : route.free_passages)
    if (names(passage.fairlead(), crossing) && is_at(passage.distance_in, crossing))
      return &passage.fairlead();
  return nullptr;
}

bool fills_hole(const RoutePoint* guide, const Hole& hole) {
  return hole.edge == EdgeGuard::grommet || hole.edge == EdgeGuard::bushing ||
         (guide && guide->hold != HoldKind::fairlead);
}

bool is_guarded(const PreparedRoute& route, const Crossing& crossing) {
  if (!crossing.hole_is_whole()) return false;
  if (guards_line(crossing.hole->edge, route)) return true;
  const RoutePoint* guide = guide_in(route, crossing);
  return guide && bears(*guide, route) && lies_in_hole(*guide, crossing);
}

}  // namespace linewright
