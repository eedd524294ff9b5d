#include "geometry/structure/pulley_body.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <span>

#include "geometry/minimise.hpp"

namespace linewright {

namespace {

/// A round plate with a rounded rim: all that is within half its thickness of a disc.
struct Plate {
  Vec3 centre;
  Vec3 axis;
  double radius_in = 0;  ///< over the rim
  double thickness_in = 0;
};

/// Of a plate thicker than it is wide so little is left that its disc is next to a point.
constexpr double least_disc_in = 1e-6;

Obstacle plate_obstacle(const Plate& plate, int part) {
  Obstacle obstacle;
  obstacle.radius_in = plate.thickness_in / 2;
  obstacle.shape = disc_of(plate.centre, plate.axis,
                           std::max(plate.radius_in - obstacle.radius_in, least_disc_in));
  obstacle.is_disc = true;
  obstacle.part = part;
  return obstacle;
}

std::array<Plate, 3> plates_of(const PulleyBody& pulley) {
  const double flange = pulley.width_in / 4;
  const Vec3 side = pulley.axis * ((pulley.width_in - flange) / 2);
  return {{{pulley.centre - side, pulley.axis, pulley.rim_radius_in, flange},
           {pulley.centre + side, pulley.axis, pulley.rim_radius_in, flange},
           {pulley.centre, pulley.axis, pulley.root_radius_in, pulley.width_in}}};
}

Vec3 any_across(Vec3 axis) {
  return unit(cross(axis, std::abs(axis.x) < 0.6 ? Vec3{1, 0, 0} : Vec3{0, 1, 0}));
}

/// One search over the chords of the plate's disc: the distance from a chord to what is convex is
/// convex in the chord's place.
Nearest nearest_of_plate(const Plate& plate, const Obstacle& obstacle) {
  const double half = plate.thickness_in / 2;
  const double radius = std::max(plate.radius_in - half, least_disc_in);
  const Vec3 along = any_across(plate.axis);
  const Vec3 across = cross(plate.axis, along);
  const auto chord = [&](double off_in) {
    const Vec3 middle = plate.centre + across * off_in;
    const Vec3 to_end = along * std::sqrt(std::max(0.0, radius * radius - off_in * off_in));
    return Segment3{middle - to_end, middle + to_end};
  };
  const auto away = [&](double off_in) { return nearest(chord(off_in), obstacle).distance_in; };
  Nearest found = nearest(chord(minimise_convex(away, -radius, radius).at), obstacle);
  found.distance_in -= half;
  return found;
}

Nearest nearest_of(const PulleyBody& pulley, std::span<const Obstacle> obstacles) {
  Nearest best{std::numeric_limits<double>::infinity(), {}, {}};
  for (const Plate& plate : plates_of(pulley))
    for (const Obstacle& obstacle : obstacles) {
      const Nearest found = nearest_of_plate(plate, obstacle);
      if (found.distance_in < best.distance_in) best = found;
    }
  return best;
}

}  // namespace

void add_pulley_body(const PulleyBody& pulley, int part, std::vector<Obstacle>& obstacles) {
  for (const Plate& plate : plates_of(pulley)) obstacles.push_back(plate_obstacle(plate, part));
}

Nearest nearest(const PulleyBody& pulley, const Obstacle& obstacle) {
  return nearest_of(pulley, {&obstacle, 1});
}

Nearest nearest(const PulleyBody& first, const PulleyBody& second) {
  std::vector<Obstacle> body;
  add_pulley_body(second, 0, body);
  return nearest_of(first, body);
}

}  // namespace linewright
