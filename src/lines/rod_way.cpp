#include "lines/rod_way.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <optional>

#include "lines/arm_circle.hpp"
#include "model/angle.hpp"

namespace linewright {

namespace {

/// An interval of the way that is halved more often than this lies on dead centre.
constexpr int most_halvings = 40;
/// A way of more places than this runs along dead centre.
constexpr std::size_t most_places = 50'000;
/// Travel that an arm falls short of by less than this is rounding.
constexpr double rounding_in = 1e-9;
/// Nearer to dead centre than this, 0.01 degree, is on it.
constexpr double dead_centre_rad = radians_of(0.01);

/// How a rod of `length_in` closes from a place of its `from` end to the circle of the arm at its
/// `to`. With g from the circle's centre to that place, L² = r² + g² − 2 r |g in the plane|
/// cos(ψ − α), α being the angle of g: wanted = r² + g² − L², swing = 2 r |g in the plane|.
struct Closing {
  double swing_in2 = 0;
  double wanted_in2 = 0;
  double toward_rad = 0;  ///< α
  /// What is left before the arm is on dead centre.
  double spare_in2() const { return swing_in2 - std::abs(wanted_in2); }
  double away_rad() const { return std::acos(std::clamp(wanted_in2 / swing_in2, -1.0, 1.0)); }
};

/// The two arms and the rod between them.
struct Linkage {
  ArmCircle from;
  ArmCircle to;
  double length_in = 0;
  double side = 1;  ///< of g, on which the `to` end is drawn: ψ = α + side · away

  Closing closing(double from_rad) const {
    const Vec3 g = from.at(from_rad) - to.centre;
    const double gu = dot(g, to.u);
    const double gv = dot(g, to.v);
    return {2 * to.radius_in * std::hypot(gu, gv),
            to.radius_in * to.radius_in + dot(g, g) - length_in * length_in, std::atan2(gv, gu)};
  }

  RodPlace place(double from_rad) const {
    const Closing here = closing(from_rad);
    const double to_rad = here.toward_rad + side * here.away_rad();
    return {from.at(from_rad), to.at(to_rad), from_rad, to_rad};
  }

  /// How fast `swing` and `wanted` change at the most with the angle at `from`: g changes by the
  /// arm's length for each radian.
  double swing_rate() const { return 2 * to.radius_in * from.radius_in; }
  double wanted_rate() const {
    return 2 * (distance(from.centre, to.centre) + from.radius_in) * from.radius_in;
  }
};

Linkage linkage_of(const PreparedRoute& route) {
  Linkage linkage{circle_of(*route.from->arm, route.from->at),
                  circle_of(*route.to->arm, route.to->at), distance(route.from->at, route.to->at)};
  linkage.side = linkage.closing(0).toward_rad > 0 ? -1 : 1;
  return linkage;
}

/// The angle nearest to neutral at which the end of the arm is `along_in` from its drawn place
/// along `direction`: r (cos φ − 1) u·d + r sin φ v·d. Nothing where it never is.
std::optional<double> angle_along(const ArmCircle& arm, Vec3 direction, double along_in) {
  const double a = dot(arm.u, direction);
  const double b = dot(arm.v, direction);
  const double amplitude = std::hypot(a, b);
  if (along_in == 0) return 0;
  if (amplitude * arm.radius_in <= rounding_in) return std::nullopt;
  const double wanted = (along_in / arm.radius_in + a) / amplitude;
  if (std::abs(wanted) > 1 + rounding_in / arm.radius_in) return std::nullopt;
  const double crest = std::atan2(b, a);
  const double away = std::acos(std::clamp(wanted, -1.0, 1.0));
  return crest > 0 ? crest - away : crest + away;
}

/// Goes over the way from one end to the other, halving what cannot be bounded as a whole.
class Walk {
 public:
  Walk(const Linkage& linkage, RodWay& way) : linkage_(linkage), way_(way) {}

  /// False where the arm at `to` cannot follow.
  bool go(double first_rad, double last_rad) {
    if (!follows(first_rad)) return false;
    way_.places.push_back(linkage_.place(first_rad));
    if (first_rad != last_rad && !cover(first_rad, last_rad, 0)) return false;
    if (!follows(last_rad)) return false;
    way_.places.push_back(linkage_.place(last_rad));
    return true;
  }

 private:
  bool follows(double from_rad) const {
    const Closing here = linkage_.closing(from_rad);
    return here.spare_in2() > 0 &&
           std::min(here.away_rad(), std::numbers::pi - here.away_rad()) > dead_centre_rad;
  }

  /// How far any point of the rod can be, over an interval, from where it is in its middle; nothing
  /// where dead centre may lie in it. The rod's length holds d · p' of both ends alike, and
  /// |d · p'| of the arm at `to` is √(swing² − wanted²) / 2 L for each radian.
  std::optional<double> stray_in(double middle_rad, double half_rad) const {
    const Closing middle = linkage_.closing(middle_rad);
    const double swing = middle.swing_in2 - linkage_.swing_rate() * half_rad;
    const double spare =
        middle.spare_in2() - (linkage_.swing_rate() + linkage_.wanted_rate()) * half_rad;
    if (spare <= 0 || swing <= 0) return std::nullopt;
    const double lever = std::sqrt(spare * swing) / (2 * linkage_.length_in);
    const double to_rate = linkage_.to.radius_in * linkage_.from.radius_in / lever;
    return std::max(linkage_.from.radius_in, to_rate) * half_rad;
  }

  bool cover(double first_rad, double last_rad, int halvings) {
    const double middle = std::midpoint(first_rad, last_rad);
    const auto stray = stray_in(middle, std::abs(last_rad - first_rad) / 2);
    if (stray && *stray <= most_stray_in) {
      way_.places.push_back(linkage_.place(middle));
      way_.stray_in = std::max(way_.stray_in, *stray);
      return true;
    }
    if (halvings >= most_halvings || way_.places.size() >= most_places || !follows(middle))
      return false;
    return cover(first_rad, middle, halvings + 1) && cover(middle, last_rad, halvings + 1);
  }

  const Linkage& linkage_;
  RodWay& way_;
};

RodWay unknown_way(RodFault fault, std::string missing) {
  RodWay way;
  way.fault = fault;
  way.missing = std::move(missing);
  return way;
}

/// The angle by which a bearing rolls about its rod when it is tilted by `tilt_rad` in all, on a
/// bolt that leans by `lean_rad` from square to the rod.
double roll_rad(double tilt_rad, double lean_rad) {
  return std::acos(std::clamp(std::cos(tilt_rad) / std::cos(lean_rad), -1.0, 1.0));
}

/// How far the bolt at the `to` end is turned about the rod from that at its `from`, as lines.
double twist_rad(Vec3 from_bolt, Vec3 to_bolt, Vec3 rod) {
  const Vec3 a = from_bolt - rod * dot(from_bolt, rod);
  const Vec3 b = to_bolt - rod * dot(to_bolt, rod);
  return std::atan2(dot(cross(a, b), rod), dot(a, b));
}

}  // namespace

RodWay rod_way(const PreparedRoute& route) {
  for (const Node* node : {route.from, route.to})
    if (!node->arm) return unknown_way(RodFault::unstated, "the arm of " + node->name);
  if (!route.moves) return unknown_way(RodFault::unstated, "the travel of " + route.route->name);
  const Linkage linkage = linkage_of(route);
  const Vec3 along = unit(route.to->at - route.from->at);
  const auto first = angle_along(linkage.from, along, -route.moves->toward_from_in);
  const auto last = angle_along(linkage.from, along, route.moves->toward_to_in);
  if (!first || !last || linkage.from.radius_in <= 0)
    return unknown_way(RodFault::from_too_short,
                       "an arm at " + route.from->name + " that gives the travel");
  RodWay way;
  if (linkage.to.radius_in <= 0 || !Walk(linkage, way).go(*first, *last))
    return unknown_way(RodFault::cannot_follow,
                       "an arm at " + route.to->name + " that follows the travel");
  return way;
}

Movement arm_gives(const PreparedRoute& route) {
  const ArmCircle arm = linkage_of(route).from;
  const Vec3 along = unit(route.to->at - route.from->at);
  const double at_neutral_in = arm.radius_in * dot(arm.u, along);
  const double most_in = arm.radius_in * std::hypot(dot(arm.u, along), dot(arm.v, along));
  return {most_in + at_neutral_in, most_in - at_neutral_in};
}

double off_dead_centre_deg(const PreparedRoute& route, const RodPlace& place) {
  const Linkage linkage = linkage_of(route);
  const Vec3 rod = unit(place.to - place.from);
  const double least = std::min(std::abs(dot(rod, linkage.from.way_at(place.from_rad))),
                                std::abs(dot(rod, linkage.to.way_at(place.to_rad))));
  return std::asin(std::min(1.0, least)) * degrees_per_radian;
}

double end_tilt_deg(const PreparedRoute& route, const RodPlace& place) {
  const Vec3 from_bolt = unit(route.from->arm->axis);
  const Vec3 to_bolt = unit(route.to->arm->axis);
  const Vec3 drawn = unit(route.to->at - route.from->at);
  const Vec3 rod = unit(place.to - place.from);
  const auto lean = [&](Vec3 bolt) { return std::asin(std::min(1.0, std::abs(dot(bolt, rod)))); };
  const double from_lean = lean(from_bolt);
  const double to_lean = lean(to_bolt);
  double twist =
      std::abs(twist_rad(from_bolt, to_bolt, rod) - twist_rad(from_bolt, to_bolt, drawn));
  twist = std::min(twist, 2 * std::numbers::pi - twist);
  // Both bearings take the same tilt where that is least for the worse of them.
  double low = std::max(from_lean, to_lean);
  double high = std::numbers::pi / 2;
  const auto shares = [&](double tilt) {
    return roll_rad(tilt, from_lean) + roll_rad(tilt, to_lean) >= twist;
  };
  if (shares(low)) return low * degrees_per_radian;
  for (int i = 0; i < 60; ++i) {
    const double middle = std::midpoint(low, high);
    (shares(middle) ? high : low) = middle;
  }
  return high * degrees_per_radian;
}

}  // namespace linewright
