#include "rules/space/whole_holes.hpp"

#include <algorithm>

#include "lines/edge_guard.hpp"

namespace linewright {

namespace {

bool has_wall(const RuleContext& context, const std::string& hole) {
  const Walls& walls = context.prepared.walls;
  return std::any_of(walls.begin(), walls.end(),
                     [&](const Wall& wall) { return !wall.implied && wall.hole().name == hole; });
}

template <typename Parts>
void add_astray(const RuleContext& context, const Parts& parts,
                std::vector<Judgement>& judgements) {
  for (const auto& part : parts) {
    for (const WallHole& hole : part.holes) {
      if (has_wall(context, hole.name)) continue;
      Judgement judgement = context.about(hole.name, hole.where);
      holds_true(judgement, false, hole_in_wall);
      judgement.message = "hole " + hole.name + " is described at no wall of " + part.name;
      judgement.mend =
          "set its `at` in the wall that it goes through; a box has holes only through "
          "a side no thicker than a board";
      judgements.push_back(judgement);
    }
  }
}

}  // namespace

std::optional<Judgement> judge_whole_hole(const RuleContext& context, const PreparedRoute& route,
                                          const Crossing& crossing) {
  if (crossing.hole_is_whole()) return std::nullopt;
  const Hole& hole = *crossing.hole;
  const Hole* other = crossing.runs_into;
  if (!guards(hole.edge) && !guide_in(route, crossing) && !(other && guards(other->edge)))
    return std::nullopt;
  Judgement judgement = context.at(route, crossing.distance_in);
  judgement.with = crossing.name();
  holds_true(judgement, false, whole_guarded_hole);
  judgement.message = other ? "holes " + hole.name + " and " + other->name + " of " +
                                  crossing.frame->name + " overlap"
                            : "hole " + hole.name + " reaches outside " + crossing.frame->name;
  judgement.message += ": nothing can be fitted in it that guards or holds the line";
  judgement.mend = "move the hole to where there is sheet all round it";
  return judgement;
}

std::vector<Judgement> judge_holes_in_walls(const RuleContext& context) {
  std::vector<Judgement> judgements;
  const Structure& structure = context.prepared.project->structure;
  add_astray(context, structure.channels, judgements);
  add_astray(context, structure.panels, judgements);
  add_astray(context, structure.solids, judgements);
  return judgements;
}

}  // namespace linewright
