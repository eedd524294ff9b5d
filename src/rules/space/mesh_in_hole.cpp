#include "rules/space/mesh_in_hole.hpp"

#include <algorithm>

#include "lines/near/nearest_structure.hpp"
#include "lines/neighbour_filter.hpp"
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
  judgement.message = "runs into " + obstacle_words(part, *place.obstacle) + " in hole " +
                      crossing.hole->name + ", which frame " + crossing.frame->name +
                      " describes as open";
  judgement.mend =
      "cut the hole there, move what covers it, or correct the one that is wrong; "
      "where the mesh only leaves the hole out, waive it with that reason";
  return judgement;
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
    if (!crossing.hole) continue;
    const auto in_web = [&](const Obstacle& obstacle, double along) {
      const Part& part = obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
      return part.kind == PartKind::mesh && lies_in_web(obstacle, *crossing.frame) &&
             filter.counts(obstacle, along) && !context.is_passed_over(route, along);
    };
    const Stretch stretch =
        make_stretch(route, std::max(0.0, crossing.distance_in - crossing_zone_in),
                     std::min(route.length_in(), crossing.distance_in + crossing_zone_in));
    for (const auto& [part, place] :
         nearest_structure(stretch, Reach::none, obstacles, 0, by_part, in_web))
      if (place.gap_in < -mesh_rounding_in)
        judgements.push_back(mesh_in_hole(context, route, crossing, place));
  }
  return judgements;
}

}  // namespace linewright
