#pragma once
// The shortest string round pulleys in one plane, by searching the angles at which it meets them.

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include "geometry/pulley_wrap.hpp"

namespace linewright::oracles {

/// A place in the plane of all pulleys. `turn` is +1 anticlockwise, −1 clockwise, 0 for a point.
struct PlanePlace {
  double x = 0;
  double y = 0;
  double radius = 0;
  double turn = 0;
};

inline std::vector<PlanePlace> in_plane(const std::vector<GivenPlace>& places) {
  const auto first = std::find_if(places.begin(), places.end(),
                                  [](const GivenPlace& each) { return each.pulley; });
  const Vec3 normal = first->pulley->axis;
  const Vec3 aside = std::abs(normal.x) < 0.7 ? Vec3{1, 0, 0} : Vec3{0, 1, 0};
  const Vec3 across = unit(cross(normal, aside));
  const Vec3 along = cross(across, normal);
  std::vector<PlanePlace> flat;
  for (const GivenPlace& place : places) {
    const Vec3 at = place.pulley ? place.pulley->centre : place.corner.at;
    PlanePlace each{dot(at, along), dot(at, across), 0, 0};
    if (place.pulley) {
      each.radius = place.pulley->radius_in;
      each.turn = dot(place.pulley->axis, normal) > 0 ? 1 : -1;
    }
    flat.push_back(each);
  }
  return flat;
}

/// The angles at which one leg leaves a place and meets the next.
struct LegAngles {
  double leaving = 0;
  double meeting = 0;
};

/// The two angles, of all whose straight cuts into neither pulley, with the least straight less
/// what they save of the arcs. Found on a grid that closes in on its best place.
inline LegAngles best_leg(const PlanePlace& a, const PlanePlace& b) {
  const double heading = std::atan2(b.y - a.y, b.x - a.x);
  const double half_turn = std::numbers::pi / 2;
  LegAngles middle{heading - a.turn * half_turn, heading - b.turn * half_turn};
  constexpr int steps = 40;
  double window = half_turn;
  for (int level = 0; level < 12; ++level) {
    double least = std::numeric_limits<double>::infinity();
    LegAngles best = middle;
    for (int i = -steps; i <= steps; ++i)
      for (int j = -steps; j <= steps; ++j) {
        const LegAngles at{middle.leaving + window * i / steps,
                           middle.meeting + window * j / steps};
        const double nx = std::cos(at.leaving), ny = std::sin(at.leaving);
        const double mx = std::cos(at.meeting), my = std::sin(at.meeting);
        const double dx = b.x + b.radius * mx - a.x - a.radius * nx;
        const double dy = b.y + b.radius * my - a.y - a.radius * ny;
        if (a.turn != 0 && dx * nx + dy * ny < 0) continue;
        if (b.turn != 0 && dx * mx + dy * my > 0) continue;
        const double cost = std::hypot(dx, dy) + a.turn * a.radius * (at.leaving - heading) -
                            b.turn * b.radius * (at.meeting - heading);
        if (cost < least) {
          least = cost;
          best = at;
        }
      }
    middle = best;
    window /= 4;
  }
  return middle;
}

/// Straights between the best angles and the arcs that join them, the way each pulley turns.
inline double shortest_string_in(const std::vector<GivenPlace>& places) {
  const std::vector<PlanePlace> flat = in_plane(places);
  double length = 0;
  double met = 0;
  for (std::size_t i = 0; i + 1 < flat.size(); ++i) {
    const PlanePlace& a = flat[i];
    const PlanePlace& b = flat[i + 1];
    const LegAngles leg = best_leg(a, b);
    length +=
        std::hypot(b.x + b.radius * std::cos(leg.meeting) - a.x - a.radius * std::cos(leg.leaving),
                   b.y + b.radius * std::sin(leg.meeting) - a.y - a.radius * std::sin(leg.leaving));
    if (a.turn != 0) {
      const double whole = 2 * std::numbers::pi;
      double wrap = std::fmod(a.turn * (leg.leaving - met), whole);
      if (wrap < -1e-6) wrap += whole;
      length += a.radius * wrap;
    }
    met = leg.meeting;
  }
  return length;
}

}  // namespace linewright::oracles
