#include "rules/space/unknown_swing.hpp"

#include <algorithm>

#include "lines/line_pairs.hpp"
#include "lines/near/nearest_lines.hpp"
#include "lines/near/nearest_structure.hpp"
#include "rules/words/neighbour_words.hpp"

namespace linewright {

namespace {

/// A span of the cable, as it hangs, with what its ends may swing.
struct SwungSpan {
  Stretch stretch;
  bool at_from = false;
  bool at_to = false;
  bool swings() const { return at_from || at_to; }
};

double travel_in(const PreparedRoute& route) {
  if (!route.moves) return unknown_travel_in;
  return std::max(route.moves->toward_from_in, route.moves->toward_to_in);
}

SwungSpan swung(const PreparedRoute& route, const Stretch& hanging) {
  SwungSpan span{hanging};
  if (hanging.swings_with) return span;
  ReachEnvelope& envelope = span.stretch.envelope;
  // It falls to nothing at the ends of the span, however far its run goes on.
  envelope.start_in = hanging.start_in;
  envelope.end_in = hanging.end_in;
  if (hanging.start_in <= 0 && swing_is_unknown(route, *route.from)) {
    span.at_from = true;
    envelope.play_first_in = std::max(envelope.play_first_in, travel_in(route));
  }
  if (hanging.end_in >= route.length_in() && swing_is_unknown(route, *route.to)) {
    span.at_to = true;
    envelope.play_last_in = std::max(envelope.play_last_in, travel_in(route));
  }
  return span;
}

/// The nearest thing that the span may meet, by name.
struct Met {
  Approach place;
  std::string name;
  std::string words;
  bool is_route = false;
};

void consider(std::optional<Met>& nearest, Met met) {
  if (!nearest || met.place.margin_in < nearest->place.margin_in) nearest = std::move(met);
}

void meet_structure(const RuleContext& context, const SwungSpan& span,
                    const NeighbourFilter& filter, std::optional<Met>& nearest) {
  const Obstacles& obstacles = context.prepared.obstacles;
  const PreparedRoute& route = *span.stretch.route;
  const auto counts = [&](const Obstacle& obstacle, double along) {
    return filter.counts(obstacle, along) && !filter.guarded_crossing_near(obstacle, along) &&
           !filter.web_crossing_near(obstacle, along) && !context.is_passed_over(route, along);
  };
  for (const auto& [index, place] : nearest_structure(
           span.stretch, Reach::likely, obstacles, context.prepared.project->build_tolerance_in,
           [](const Obstacle& obstacle) { return obstacle.part; }, counts)) {
    const Part& part = obstacles.parts()[static_cast<std::size_t>(index)];
    consider(nearest, {place, part.name, obstacle_words(part, *place.obstacle, context.phrasing)});
  }
}

void meet_lines(const RuleContext& context, const SwungSpan& span, std::optional<Met>& nearest) {
  const PreparedRoute& route = *span.stretch.route;
  for (const PreparedRoute& other : context.prepared.routes) {
    if (&other == &route) continue;
    const auto counts = [&](double along, double other_along) {
      return !at_shared_node(route, along, other, other_along) &&
             !context.is_passed_over(route, along) && !context.is_passed_over(other, other_along);
    };
    for (const Stretch& stretch : context.motion.hanging[context.index_of(other)]) {
      const auto place = nearest_lines(span.stretch, stretch, Reach::likely,
                                       2 * context.prepared.project->build_tolerance_in, counts);
      if (place) consider(nearest, {*place, other.route->name, other.route->name, true});
    }
  }
}

std::string lacks(const PreparedRoute& route, const Node& node) {
  if (node.arm) return "the travel of " + route.route->name + " is not stated";
  return route.moves ? "its arm is not stated" : "its arm and the cable's travel are not stated";
}

Judgement judgement_of(const RuleContext& context, const SwungSpan& span, const Met& met,
                       const LimitRow& row) {
  const PreparedRoute& route = *span.stretch.route;
  const bool from = span.at_from && (!span.at_to || met.place.distance_in < route.length_in() / 2);
  const Node& node = from ? *route.from : *route.to;
  Judgement judgement = context.at(route, met.place.distance_in);
  judgement.with = met.name;
  judgement.with_is_route = met.is_route;
  leave_unknown(judgement, row);
  judgement.message = "how far " + node.name +
                      " swings the cable is not known: " + lacks(route, node) + ", and " +
                      met.words + " is " + context.phrasing.length(met.place.gap_in) + " away";
  judgement.mend = node.arm ? "state the route's `travel`"
                            : "state the `arm` of node " + node.name +
                                  (route.moves ? "" : " and the route's `travel`");
  return judgement;
}

}  // namespace

std::vector<Judgement> judge_unknown_swings(const RuleContext& context, const PreparedRoute& route,
                                            const NeighbourFilter& filter, const LimitRow& row) {
  std::vector<Judgement> judgements;
  if (route.line->kind != LineKind::cable) return judgements;
  if (!swing_is_unknown(route, *route.from) && !swing_is_unknown(route, *route.to))
    return judgements;
  for (const Stretch& hanging : context.motion.hanging[context.index_of(route)]) {
    const SwungSpan span = swung(route, hanging);
    if (!span.swings()) continue;
    std::optional<Met> nearest;
    meet_structure(context, span, filter, nearest);
    meet_lines(context, span, nearest);
    if (nearest) judgements.push_back(judgement_of(context, span, *nearest, row));
  }
  return judgements;
}

}  // namespace linewright
