#include "lines/stated_pulley.hpp"

#include <algorithm>

namespace linewright {

const RoutePoint& point_of(const RoutePulley& pulley) {
  const std::vector<RoutePoint>& points = pulley.route->points;
  return *std::find_if(points.begin(), points.end(), [&](const RoutePoint& point) {
    return point.hold == HoldKind::pulley && point.where == pulley.body.where;
  });
}

PulleyBody least_body(const RoutePulley& pulley, const Line& line) {
  const RoutePoint& point = point_of(pulley);
  PulleyBody body = pulley.body;
  body.rim_radius_in = point.outside_in ? *point.outside_in / 2 : *point.diameter_in / 2;
  body.width_in = point.width_in.value_or(line.outside_diameter_in);
  return body;
}

}  // namespace linewright
