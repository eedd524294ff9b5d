#include "lines/stated_pulley.hpp"

#include <algorithm>

namespace linewright {

namespace {

/// Two pulleys whose spindles lie this near to each other, and lean from each other by no more than
/// about 3 degrees, are on one [common practice, no source].
constexpr double same_spindle_in = 0.25;
constexpr double same_spindle_sine = 0.05;

}  // namespace

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

bool share_a_spindle(const PulleyBody& first, const PulleyBody& second) {
  const Vec3 apart = second.centre - first.centre;
  return norm(cross(first.axis, second.axis)) <= same_spindle_sine &&
         norm(apart - first.axis * dot(apart, first.axis)) <= same_spindle_in;
}

}  // namespace linewright
