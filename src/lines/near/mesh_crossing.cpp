#include "lines/near/mesh_crossing.hpp"

#include <algorithm>

#include "lines/near/stretch.hpp"
#include "lines/neighbour_filter.hpp"

namespace linewright {
namespace {

/// A piercing right at an edge that two triangles share may miss both by what rounding leaves.
constexpr double pierced_in = 1e-7;

/// Distances along the line at which the chord pierces the mesh.
void add_piercings(const PreparedRoute& route, const PathChord& chord, const MeshPartField& mesh,
                   std::span<const MeshField::NearCell> cells, const NeighbourFilter& filter,
                   std::vector<MeshCrossing>& piercings) {
  const Segment3 segment{chord.from, chord.to};
  const double length = distance(chord.from, chord.to);
  mesh.field->visit_within(segment, pierced_in, cells, [&](const MeshItem& item, double) {
    if (item.is_edge) return pierced_in;
    const Nearest found = nearest(segment, item.shape);
    if (found.distance_in > pierced_in) return pierced_in;
    const double part = length > 0 ? distance(chord.from, found.on_first) / length : 0;
    const double along = chord.start_in + (chord.end_in - chord.start_in) * part;
    Obstacle obstacle = obstacle_of(mesh, item);
    const bool at_end = std::min(along, route.length_in() - along) <= mount_depth_in + pierced_in;
    if ((!at_end || filter.counts(obstacle, along)) && !filter.crossing_near(obstacle, along))
      piercings.push_back({along, std::move(obstacle)});
    return pierced_in;
  });
}

}  // namespace

std::vector<MeshCrossing> mesh_crossings(const PreparedProject& prepared,
                                         const PreparedRoute& route) {
  std::vector<MeshCrossing> crossings;
  if (prepared.obstacles.meshes().empty()) return crossings;
  const NeighbourFilter filter(prepared, route);
  const Stretch whole = make_stretch(route, 0, route.length_in());
  for (const MeshPartField& mesh : prepared.obstacles.meshes()) {
    std::vector<MeshCrossing> piercings;
    for (const ChordBlock& block : whole.blocks) {
      const auto cells = mesh.field->cells_near(block.bounds, pierced_in);
      for (std::size_t i = block.first; i < block.end && !cells.empty(); ++i)
        add_piercings(route, whole.chord(i), mesh, cells, filter, piercings);
    }
    std::stable_sort(
        piercings.begin(), piercings.end(),
        [](const MeshCrossing& a, const MeshCrossing& b) { return a.distance_in < b.distance_in; });
    double last = -2 * one_crossing_in;
    for (MeshCrossing& piercing : piercings) {
      const bool same = piercing.distance_in - last <= one_crossing_in;
      last = piercing.distance_in;
      if (!same) crossings.push_back(std::move(piercing));
    }
  }
  return crossings;
}

}  // namespace linewright
