#include "rules/space/separation_fittings.hpp"

#include <algorithm>
#include <map>
#include <optional>

#include "lines/near/nearest_structure.hpp"
#include "lines/neighbour_filter.hpp"
#include "rules/space/fitting_bodies.hpp"
#include "rules/space/separation_zones.hpp"

namespace linewright {

namespace {

using separation_rows::overlap;

/// How far a fitting that hangs on its lines swings toward a line; its own lines go with it.
double swing_beside_in(const RuleContext& context, const PreparedRoute& route,
                       const NodeFitting& fitting) {
  if (route.from == fitting.node || route.to == fitting.node) return 0;
  return context.swing_in(fitting);
}

Judgement judge_near(const RuleContext& context, const PreparedRoute& route,
                     const NodeFitting& fitting, const Approach& approach,
                     const SeparationZone& zone) {
  // The line and the fitting may each lie off by the tolerance.
  const double swing_in = swing_beside_in(context, route, fitting);
  const double free_in =
      approach.margin_in - swing_in - 2 * context.prepared.project->build_tolerance_in;
  std::string what = "the fitting at " + fitting.node->name;
  if (swing_in > 0)
    what += ", which can swing " + context.phrasing.length(swing_in) + " with its lines";
  Judgement judgement = context.at(route, approach.distance_in);
  judgement.with = "fitting at " + fitting.node->name;
  if (holds(judgement, free_in, {overlap, *zone.least, *zone.row})) {
    judgement.message = "far enough from " + what;
    return judgement;
  }
  judgement.message = judgement.limit == overlap.value
                          ? "can touch " + what
                          : "only " + context.phrasing.length(free_in) + " from " + what;
  judgement.mend = "move the line or the fitting " +
                   context.phrasing.length_up(Limit(*zone.row).lacking(free_in)) + " away";
  return judgement;
}

/// As one of the fitting's lines, `owner`, has it: the gravest of all zones, and of all stretches
/// of the line.
std::optional<Judgement> judge_fitting(const RuleContext& context, const PreparedRoute& route,
                                       const NeighbourFilter& filter, const NodeFitting& fitting,
                                       const PreparedRoute& owner) {
  const double at_owner_in = owner.from == fitting.node ? 0 : owner.length_in();
  const Reach reach = works_control(route.line->kind) ? Reach::likely : Reach::none;
  const double tolerance_in = 2 * context.prepared.project->build_tolerance_in;
  const int part = context.prepared.part_of(fitting);
  std::optional<Judgement> worst;
  for (const SeparationZone& zone : separation_zones(context, route, owner)) {
    const auto counts = [&](const Obstacle& obstacle, double along) {
      return filter.counts(obstacle, along) && zone.counts(along, at_owner_in) &&
             !context.is_passed_over(route, along);
    };
    const double horizon_in =
        zone.row->value + tolerance_in + beyond_limit_in + swing_beside_in(context, route, fitting);
    for (const Stretch& stretch : context.motion.hanging[context.index_of(route)]) {
      const auto approach =
          nearest_of_part(stretch, reach, context.prepared.obstacles, part, horizon_in, counts);
      if (!approach) continue;
      Judgement judgement = judge_near(context, route, fitting, *approach, zone);
      if (!worst || graver(judgement, *worst)) worst = std::move(judgement);
    }
  }
  return worst;
}

}  // namespace

std::vector<Judgement> judge_fittings_beside(const RuleContext& context,
                                             const PreparedRoute& route) {
  std::vector<Judgement> judgements;
  if (context.prepared.fittings.empty()) return judgements;
  const NeighbourFilter filter(context.prepared, route);
  for (const NodeFitting& fitting : context.prepared.fittings) {
    std::optional<Judgement> worst;
    for (const PreparedRoute& owner : context.prepared.routes) {
      if (owner.from != fitting.node && owner.to != fitting.node) continue;
      auto judgement = judge_fitting(context, route, filter, fitting, owner);
      if (judgement && (!worst || graver(*judgement, *worst))) worst = std::move(judgement);
    }
    if (worst) judgements.push_back(*std::move(worst));
  }
  return judgements;
}

}  // namespace linewright
