#include "rules/space/mesh_in_hole.hpp"

#include <algorithm>
#include <optional>
#include <set>
#include <utility>

#include "geometry/plane/polygon.hpp"
#include "lines/near/nearest_structure.hpp"
#include "rules/space/mesh_round_hole.hpp"
#include "rules/words/neighbour_words.hpp"

namespace linewright {

namespace {

/// A mesh's corners are rounded to 32 bits, and its round holes have flats.
constexpr double mesh_rounding_in = 0.001;

Judgement mesh_in_hole(const RuleContext& context, const PreparedRoute& route,
                       const Crossing& crossing, const Approach& place) {
  const Part& part =
      context.prepared.obstacles.parts()[static_cast<std::size_t>(place.obstacle->part)];
  Judgement judgement = context.at(route, place.distance_in);
  judgement.with = part.name;
  holds(judgement, place.gap_in, {mesh_in_hole_limit});
  judgement.message = "runs into " + obstacle_words(part, *place.obstacle, context.phrasing) +
                      " in hole " + crossing.hole->name + ", which " +
                      frame_words(*crossing.frame, context.phrasing) + " describes as open";
  judgement.mend =
      "cut the hole there, move what covers it, or correct the one that is wrong; "
      "where the mesh only leaves the hole out, waive it with that reason";
  return judgement;
}

Judgement mesh_edge_in_hole(const RuleContext& context, const PreparedRoute& route,
                            const Crossing& crossing, const Approach& place) {
  const Part& part =
      context.prepared.obstacles.parts()[static_cast<std::size_t>(place.obstacle->part)];
  const double depth = depth_in_hole_in(crossing, place.on_other);
  Judgement judgement = context.at(route, place.distance_in);
  judgement.with = part.name;
  holds(judgement, depth, {mesh_hole_limit});
  judgement.message = obstacle_words(part, *place.obstacle, context.phrasing) + " stands " +
                      context.phrasing.length(depth) + " inside hole " + crossing.hole->name +
                      " of " + frame_words(*crossing.frame, context.phrasing) +
                      ", from its edge as described";
  judgement.mend = "correct the one that is wrong: the hole, or the mesh";
  return judgement;
}

/// Where the mesh's hole is the larger one, the line is held against an edge that may not be there,
/// and what is fitted in the hole may have nothing to hold on to.
std::optional<Judgement> mesh_wider_than_hole(const RuleContext& context,
                                              const PreparedRoute& route, const Crossing& crossing,
                                              const MeshPartField& mesh) {
  const auto open_in = left_open_in(mesh, crossing);
  if (!open_in) return std::nullopt;
  Judgement judgement = context.at(route, crossing.distance_in);
  judgement.with = context.prepared.obstacles.parts()[static_cast<std::size_t>(mesh.part)].name;
  if (holds(judgement, *open_in, {mesh_wider_limit})) return std::nullopt;
  judgement.message = "mesh " + *judgement.with + " leaves " + context.phrasing.length(*open_in) +
                      " open beyond the edge of hole " + crossing.hole->name + " of frame " +
                      crossing.frame->name + " as described";
  judgement.mend = "correct the one that is wrong: the hole, or the mesh";
  return judgement;
}

/// How far from the crossing the hole's edge goes, at the most.
double hole_size_in(const Crossing& crossing) {
  const Vec2 here = crossing.in_plane(crossing.at);
  double size = 0;
  for (const Vec2 corner : edge_polygon(*crossing.hole, 0.01))
    size = std::max(size, distance(here, corner));
  return size;
}

}  // namespace

std::vector<Judgement> judge_meshes_in_holes(const RuleContext& context,
                                             const PreparedRoute& route) {
  std::vector<Judgement> judgements;
  const Obstacles& obstacles = context.prepared.obstacles;
  if (obstacles.meshes().empty()) return judgements;
  const NeighbourFilter filter(context.prepared, route);
  const auto by_part = [](const Obstacle& obstacle) { return obstacle.part; };
  for (const Crossing& crossing : route.crossings) {
    if (!crossing.hole || crossing.wall) continue;
    const auto in_web = [&](const Obstacle& obstacle, double along) {
      const Part& part = obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
      return part.kind == PartKind::mesh && lies_in_web(obstacle, *crossing.frame) &&
             filter.counts(obstacle, along) && !context.is_passed_over(route, along);
    };
    for (const MeshPartField& mesh : obstacles.meshes())
      if (auto wider = mesh_wider_than_hole(context, route, crossing, mesh))
        judgements.push_back(std::move(*wider));
    std::set<int> said;
    const Stretch stretch =
        make_stretch(route, std::max(0.0, crossing.distance_in - crossing_zone_in),
                     std::min(route.length_in(), crossing.distance_in + crossing_zone_in));
    for (const auto& [part, place] :
         nearest_structure(stretch, Reach::none, obstacles, 0, by_part, in_web)) {
      if (place.gap_in >= -mesh_rounding_in) continue;
      judgements.push_back(mesh_in_hole(context, route, crossing, place));
      said.insert(part);
    }
    if (is_filled(route, crossing)) continue;
    const auto deep_in_hole = [&](const Obstacle& obstacle, double along) {
      return !said.contains(obstacle.part) && in_web(obstacle, along) &&
             depth_in_hole_in(crossing, nearest(route.centreline.at(along), obstacle).on_second) >
                 same_edge_in;
    };
    for (const auto& [part, place] : nearest_structure(
             stretch, Reach::none, obstacles, hole_size_in(crossing), by_part, deep_in_hole))
      judgements.push_back(mesh_edge_in_hole(context, route, crossing, place));
  }
  return judgements;
}

}  // namespace linewright
