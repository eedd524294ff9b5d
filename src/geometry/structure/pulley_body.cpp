#include "geometry/structure/pulley_body.hpp"

#include <algorithm>

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

Obstacle obstacle_of(const Plate& plate, int part) {
  Obstacle obstacle;
  obstacle.radius_in = plate.thickness_in / 2;
  obstacle.shape = disc_of(plate.centre, plate.axis,
                           std::max(plate.radius_in - obstacle.radius_in, least_disc_in));
  obstacle.is_disc = true;
  obstacle.part = part;
  return obstacle;
}

}  // namespace

void add_pulley_body(const PulleyBody& pulley, int part, std::vector<Obstacle>& obstacles) {
  const double flange = pulley.width_in / 4;
  const Vec3 side = pulley.axis * ((pulley.width_in - flange) / 2);
  for (const Plate& plate :
       {Plate{pulley.centre - side, pulley.axis, pulley.rim_radius_in, flange},
        Plate{pulley.centre + side, pulley.axis, pulley.rim_radius_in, flange},
        Plate{pulley.centre, pulley.axis, pulley.root_radius_in, pulley.width_in}})
    obstacles.push_back(obstacle_of(plate, part));
}

}  // namespace linewright
