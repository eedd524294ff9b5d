#include "lines/pulleys.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "lines/prepared.hpp"

namespace linewright {

namespace {

/// Two pulleys whose spindles lie this near to each other are on one
/// [common practice, no source].
constexpr double one_spindle_in = 0.25;
/// And lean from each other by no more than this, about 3 degrees.
constexpr double one_spindle_sine = 0.05;
/// A cable that has left the rim by so much has left the pulley.
constexpr double off_rim_in = 1.0;
/// The legs of a turn with less than this cosine of half its angle no longer meet.
constexpr double meets_cosine = 1e-3;

struct Legs {
  Vec3 before;  ///< unit vectors along the line
  Vec3 after;
};

Legs legs_at(const Centreline& line, std::size_t corner) {
  const auto& corners = line.corners();
  return {unit(corners[corner].at - corners[corner - 1].at),
          unit(corners[corner + 1].at - corners[corner].at)};
}

/// From the corner toward the inside of the turn, R / cos(θ/2).
std::optional<Vec3> centre_of_turn(Vec3 corner, const Legs& legs, double radius_in) {
  const Vec3 inward = legs.after - legs.before;
  const double cosine = norm(legs.after + legs.before) / 2;
  if (norm(inward) < Centreline::straight_below_rad || cosine < meets_cosine) return std::nullopt;
  return corner + unit(inward) * (radius_in / cosine);
}

/// Part of a route.
struct Along {
  double from_in = 0;
  double to_in = 0;
};

/// What of the route lies in the groove.
Along bearing_on(const PreparedRoute& route, std::size_t index) {
  for (const Bend& bend : route.centreline.bends())
    if (bend.corner == static_cast<int>(index) + 1) return {bend.start_in, bend.end_in};
  return {route.point_distance_in[index], route.point_distance_in[index]};
}

/// The same with the straights on both sides, to where the route turns next.
Along with_legs(const PreparedRoute& route, std::size_t index) {
  Along along{0, route.length_in()};
  for (const Bend& bend : route.centreline.bends()) {
    if (bend.corner <= static_cast<int>(index)) along.from_in = bend.end_in;
    if (bend.corner > static_cast<int>(index) + 1) {
      along.to_in = bend.start_in;
      break;
    }
  }
  return along;
}

std::optional<RoutePulley> pulley_at(const PreparedRoute& route, std::size_t index) {
  const RoutePoint& point = route.route->points[index];
  if (point.hold != HoldKind::pulley || !point.diameter_in) return std::nullopt;
  const Legs legs = legs_at(route.centreline, index + 1);
  const double groove = *point.diameter_in / 2;
  const bool by_centre = point.given == PointGiven::centre;
  const std::optional<Vec3> centre =
      by_centre ? std::optional<Vec3>{point.at} : centre_of_turn(point.at, legs, groove);
  const Vec3 axis = point.axis ? *point.axis : cross(legs.before, legs.after);
  if (!centre || norm(axis) <= 0) return std::nullopt;
  const double cable = route.line->outside_diameter_in;
  RoutePulley pulley;
  pulley.body.where = point.where;
  pulley.body.centre = *centre;
  pulley.body.axis = unit(axis);
  pulley.body.root_radius_in = std::max(groove - cable / 2, 0.0);
  pulley.body.rim_radius_in =
      point.outside_in ? *point.outside_in / 2 : groove + rim_over_groove_diameters * cable;
  pulley.body.width_in = point.width_in.value_or(pulley_width_diameters * cable);
  const double off = pulley.body.rim_radius_in + off_rim_in;
  const double leaves = std::sqrt(std::max(off * off - groove * groove, 0.0));
  const Along along = bearing_on(route, index);
  const Along legs_too = with_legs(route, index);
  pulley.from_in = std::min(along.from_in - leaves, legs_too.from_in);
  pulley.to_in = std::max(along.to_in + leaves, legs_too.to_in);
  return pulley;
}

/// On one spindle, and so far apart along it that the line in the one groove is clear of the other.
bool side_by_side(const PulleyBody& body, const PulleyBody& own, double line_radius_in) {
  return share_a_spindle(own, body) &&
         std::abs(dot(body.centre - own.centre, own.axis)) >= body.width_in / 2 + line_radius_in;
}

/// Counted from the nose, then from the left and from below.
int number_of(const Route& route, std::size_t index) {
  const auto key = [](const RoutePoint& point) {
    return std::tuple(point.at.x, point.at.y, point.at.z);
  };
  return 1 + static_cast<int>(std::count_if(
                 route.points.begin(), route.points.end(), [&](const RoutePoint& point) {
                   return point.hold == HoldKind::pulley && key(point) < key(route.points[index]);
                 }));
}

}  // namespace

std::vector<RoutePulley> pulleys_of(const std::vector<PreparedRoute>& routes) {
  std::vector<RoutePulley> pulleys;
  for (const PreparedRoute& route : routes) {
    for (std::size_t i = 0; i < route.route->points.size(); ++i) {
      std::optional<RoutePulley> pulley = pulley_at(route, i);
      if (!pulley) continue;
      pulley->route = route.route;
      pulley->body.name =
          "pulley " + std::to_string(number_of(*route.route, i)) + " of " + route.route->name;
      pulleys.push_back(std::move(*pulley));
    }
  }
  return pulleys;
}

bool share_a_spindle(const PulleyBody& first, const PulleyBody& second) {
  const Vec3 apart = second.centre - first.centre;
  return norm(cross(first.axis, second.axis)) <= one_spindle_sine &&
         norm(apart - first.axis * dot(apart, first.axis)) <= one_spindle_in;
}

bool runs_on(const RoutePulley& pulley, const std::vector<RoutePulley>& all,
             const PreparedRoute& route, double along_in) {
  return std::any_of(all.begin(), all.end(), [&](const RoutePulley& own) {
    if (own.route != route.route || along_in < own.from_in || along_in > own.to_in) return false;
    return &own == &pulley || side_by_side(pulley.body, own.body, route.radius_in(along_in));
  });
}

}  // namespace linewright
