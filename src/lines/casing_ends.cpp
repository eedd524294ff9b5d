#include "lines/casing_ends.hpp"

#include <algorithm>
#include <cmath>

#include "lines/arm_circle.hpp"
#include "model/angle.hpp"

namespace linewright {

namespace {

/// A tangent with less of FS in it than this runs square to FS.
constexpr double fore_and_aft_cosine = 0.1;
/// An arm shorter than this is none.
constexpr double least_arm_in = 1e-6;
/// No more places than this are given of a pin's way.
constexpr int most_places = 1000;

}  // namespace

std::optional<WireTravel> wire_travel(const PreparedRoute& route) {
  if (!route.route->travel) return std::nullopt;
  const double forward = route.route->travel->forward_in;
  const double aft = route.route->travel->aft_in;
  const double along = route.centreline.direction(0).x;
  if (along > fore_and_aft_cosine) return WireTravel{forward, aft};
  if (along < -fore_and_aft_cosine) return WireTravel{aft, forward};
  const double larger = std::max(forward, aft);
  return WireTravel{larger, larger, std::min(forward, aft)};
}

std::optional<std::array<CasingEnd, 2>> casing_ends(const PreparedRoute& route) {
  const std::optional<WireTravel> travel = wire_travel(route);
  const std::optional<RunOut>& stated = route.route->run_out;
  if (route.line->kind != LineKind::conduit || !travel || !stated) return std::nullopt;
  const auto end = [&](RouteEnd which, double neutral, double pushed, double drawn) {
    const bool at_from = which == RouteEnd::from;
    const double along = at_from ? 0 : route.length_in();
    CasingEnd found;
    found.end = which;
    found.node = at_from ? route.from : route.to;
    found.distance_in = along;
    found.out = route.centreline.direction(along) * (at_from ? -1.0 : 1.0);
    found.neutral_in = neutral;
    found.most_in = neutral + pushed;
    found.least_in = neutral - drawn;
    found.surely_least_in = neutral - travel->surely_in.value_or(drawn);
    found.arm = at_from ? stated->from_arm : stated->to_arm;
    return found;
  };
  return std::array{
      end(RouteEnd::from, stated->from_in, travel->toward_from_in, travel->toward_to_in),
      end(RouteEnd::to, stated->to_in, travel->toward_to_in, travel->toward_from_in)};
}

std::string missing_of_casing(const PreparedRoute& route) {
  if (!route.route->travel) return "the travel of " + route.route->name;
  if (!route.route->run_out) return "the run_out of " + route.route->name;
  return {};
}

std::optional<PinWay> pin_way(const CasingEnd& end) {
  if (!end.arm) return std::nullopt;
  const Vec3 from_pivot = end.pin() - end.arm->pivot;
  if (norm(cross(from_pivot, unit(end.arm->axis))) < least_arm_in) return std::nullopt;
  const ArmCircle circle = circle_of(*end.arm, end.pin());
  const Vec3 mouth = end.node->at;
  PinWay way;
  const double in_rad = angle_at(circle, mouth, std::max(0.0, end.least_in), way.reaches);
  const double out_rad = angle_at(circle, mouth, end.most_in, way.reaches);
  const double way_in = circle.radius_in * std::abs(out_rad - in_rad);
  const int count =
      std::clamp(static_cast<int>(std::ceil(way_in / pin_places_apart_in)), 1, most_places);
  way.stray_in = way_in / count / 2;
  for (int step = 0; step <= count; ++step) {
    const Vec3 place = circle.at(std::lerp(in_rad, out_rad, step / static_cast<double>(count)));
    way.places.push_back(place);
    const Vec3 wire = place - mouth;
    if (norm(wire) < least_arm_in) continue;
    const double off_rad = std::atan2(norm(cross(end.out, wire)), dot(end.out, wire));
    way.most_angle_deg = std::max(way.most_angle_deg, off_rad * degrees_per_radian);
  }
  return way;
}

}  // namespace linewright
