#include "rules/space/fitting_bodies.hpp"

#include <algorithm>
#include <limits>
#include <map>

#include "rules/space/fitting_mount.hpp"
#include "rules/words/neighbour_words.hpp"

namespace linewright {

namespace {

/// Parts farther than this are no neighbours and are not listed.
constexpr double near_in = 1.5;

/// What of a part is nearest to a body.
struct Near {
  double gap_in = std::numeric_limits<double>::infinity();
  Obstacle obstacle;
  Vec3 at;
};

class BodySurvey {
 public:
  /// `swing_in`: how far the fitting, and what fitting comes to meet it, swing with their lines.
  BodySurvey(const PreparedProject& prepared, const NodeFitting& fitting, double swing_in)
      : prepared_(prepared),
        fitting_(fitting),
        mount_(prepared, fitting),
        horizon_in_(near_in + swing_in) {
    for (const Segment3& leg : fitting_.legs) look_about(leg);
  }

  /// By part.
  const std::map<int, Near>& near() const { return near_; }

 private:
  /// Each pair of fittings once: the later of the two speaks.
  bool counts(const Obstacle& obstacle, bool of_mesh) const {
    const NodeFitting* other = prepared_.fitting_of(obstacle.part);
    if (other) return other < &fitting_;
    return !mount_.holds(obstacle, of_mesh);
  }

  void consider(const Segment3& leg, const Obstacle& obstacle, bool of_mesh) {
    const Nearest found = nearest(leg, obstacle);
    const double gap_in = found.distance_in - fitting_.body.radius_in;
    if (gap_in > horizon_in_ || !counts(obstacle, of_mesh)) return;
    Near& known = near_[obstacle.part];
    if (gap_in < known.gap_in) known = {gap_in, obstacle, found.on_first};
  }

  void look_about(const Segment3& leg) {
    prepared_.obstacles.visit_near(
        leg, fitting_.body.radius_in + horizon_in_,
        [&](const Obstacle& each, bool of_mesh) { consider(leg, each, of_mesh); });
  }

  const PreparedProject& prepared_;
  const NodeFitting& fitting_;
  FittingMount mount_;
  double horizon_in_;
  std::map<int, Near> near_;
};

/// On the route whose end the fitting is, so that it can be waived there.
Judgement begun(const RuleContext& context, const NodeFitting& fitting) {
  const PreparedRoute* route = route_at(context.prepared, *fitting.node);
  if (!route) return context.about(fitting.node->name, fitting.node->where);
  Judgement judgement = context.at(*route, route->from == fitting.node ? 0 : route->length_in());
  judgement.location = fitting.node->where;
  return judgement;
}

bool share_a_line(const PreparedProject& prepared, const Node& first, const Node& second) {
  const std::vector<const PreparedRoute*> routes = prepared.routes_at(first);
  return std::any_of(routes.begin(), routes.end(), [&](const PreparedRoute* route) {
    return route->from == &second || route->to == &second;
  });
}

/// How far the fitting and what is near to it can swing toward each other; with a line between them
/// two fittings swing together.
double swing_toward_in(const RuleContext& context, const NodeFitting& fitting, const Near& near) {
  const double own_in = context.swing_in(fitting);
  const NodeFitting* other = context.prepared.fitting_of(near.obstacle.part);
  if (!other) return own_in;
  const double other_in = context.swing_in(*other);
  return share_a_line(context.prepared, *fitting.node, *other->node) ? std::max(own_in, other_in)
                                                                     : own_in + other_in;
}

Judgement judge_gap(const RuleContext& context, const NodeFitting& fitting, const Near& near) {
  const Part& part =
      context.prepared.obstacles.parts()[static_cast<std::size_t>(near.obstacle.part)];
  Judgement judgement = begun(context, fitting);
  judgement.with = part.name;
  judgement.at = near.at;
  const double swing_in = swing_toward_in(context, fitting, near);
  const double free_in = near.gap_in - swing_in - context.prepared.project->build_tolerance_in;
  const std::string what = obstacle_words(part, near.obstacle, context.phrasing);
  std::string who = "the fitting at " + fitting.node->name;
  if (swing_in > 0)
    who += ", which can swing " + context.phrasing.length(swing_in) + " with its lines,";
  if (holds(judgement, free_in, {fitting_overlap})) {
    judgement.message = who + " stands clear of " + what;
    return judgement;
  }
  judgement.message = who + " can be in " + what;
  judgement.mend = "move or turn the fitting by " +
                   context.phrasing.length_up(Limit(fitting_overlap).lacking(free_in)) +
                   ", or cut a hole for it";
  if (swing_in > 0) judgement.mend += ", or hold the lines near it";
  if (!fitting.node->held()) judgement.mend += "; `fixed: true` if it is mounted there";
  return judgement;
}

bool is_passed_over(const RuleContext& context, const NodeFitting& fitting) {
  const PreparedRoute* route = route_at(context.prepared, *fitting.node);
  return route &&
         context.is_passed_over(*route, route->from == fitting.node ? 0 : route->length_in());
}

}  // namespace

const PreparedRoute* route_at(const PreparedProject& prepared, const Node& node) {
  const std::vector<const PreparedRoute*> routes = prepared.routes_at(node);
  return routes.empty() ? nullptr : routes.front();
}

bool is_of_a_line(const PreparedProject& prepared, const Obstacle& obstacle) {
  const NodeFitting* fitting = prepared.fitting_of(obstacle.part);
  return fitting && route_at(prepared, *fitting->node) != nullptr;
}

std::vector<Judgement> judge_fitting_bodies(const RuleContext& context) {
  std::vector<Judgement> judgements;
  double most_swing_in = 0;
  for (const double swing_in : context.motion.fitting_swings_in)
    most_swing_in = std::max(most_swing_in, swing_in);
  for (const NodeFitting& fitting : context.prepared.fittings) {
    if (is_passed_over(context, fitting)) continue;
    const BodySurvey survey(context.prepared, fitting, context.swing_in(fitting) + most_swing_in);
    const Near* nearest_free = nullptr;
    bool stands_free = true;
    for (const auto& [part, near] : survey.near()) {
      Judgement judgement = judge_gap(context, fitting, near);
      if (judgement.verdict != Verdict::pass) {
        stands_free = false;
        judgements.push_back(std::move(judgement));
      }
      if (!nearest_free || near.gap_in < nearest_free->gap_in) nearest_free = &near;
    }
    if (stands_free && nearest_free)
      judgements.push_back(judge_gap(context, fitting, *nearest_free));
  }
  return judgements;
}

}  // namespace linewright
