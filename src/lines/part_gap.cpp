#include "lines/part_gap.hpp"

#include <algorithm>

namespace linewright {

double gap_to_part_in(const PreparedProject& prepared, const PreparedRoute& route,
                      double distance_in, int part) {
  const Vec3 at = route.centreline.at(distance_in);
  double least = 1e300;
  for (const Obstacle& obstacle : prepared.obstacles.of_part(part))
    least = std::min(least, nearest(at, obstacle).distance_in);
  for (const MeshPartField& mesh : prepared.obstacles.meshes()) {
    if (mesh.part != part) continue;
    if (const auto item = mesh.field->nearest_item({at, at}, MeshField::largest_in))
      least = std::min(least, nearest(at, obstacle_of(mesh, *item)).distance_in);
  }
  return std::max(0.0, least - route.radius_in(distance_in));
}

}  // namespace linewright
