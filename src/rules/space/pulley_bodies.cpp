#include "rules/space/pulley_bodies.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <optional>
#include <string>
#include <utility>

#include "lines/stated_pulley.hpp"
#include "rules/words/neighbour_words.hpp"

namespace linewright {

namespace {

/// Parts farther than this are no neighbours and are not listed.
constexpr double beside_pulley_in = 0.5;

/// What of a part is nearest to a pulley.
struct Beside {
  double gap_in = std::numeric_limits<double>::infinity();
  double least_gap_in = std::numeric_limits<double>::infinity();  ///< of what is stated of its size
  Obstacle obstacle;
  Vec3 at;
};

class PulleySurvey {
 public:
  PulleySurvey(const RuleContext& context, const RoutePulley& pulley)
      : context_(context), prepared_(context.prepared), pulley_(pulley), least_(least_of(pulley)) {
    const std::string& to = point_of(pulley).to;
    if (!to.empty()) held_by_ = prepared_.obstacles.find_part(to);
    look_round();
  }

  /// By part.
  const std::map<int, Beside>& beside() const { return beside_; }

 private:
  PulleyBody least_of(const RoutePulley& pulley) const {
    return least_body(pulley, *prepared_.project->catalogue.find_line(pulley.route->line));
  }

  /// Fittings are judged against pulleys by their own bodies.
  bool counts(const Obstacle& obstacle) const {
    if (obstacle.part == held_by_ || prepared_.fitting_of(obstacle.part)) return false;
    const RoutePulley* other = prepared_.pulley_of(obstacle.part);
    return !other || counts(*other);
  }

  /// Each pair once: the later of the two by name speaks, unless the other is asked about alone.
  /// Half a turn round one is drawn by two points.
  bool counts(const RoutePulley& other) const {
    if (&other == &pulley_) return false;
    if (other.route == pulley_.route && share_a_spindle(other.body, pulley_.body) &&
        distance(other.body.centre, pulley_.body.centre) < least_.width_in / 2)
      return false;
    const PreparedRoute* route = prepared_.find_route(other.route->name);
    return other.body.name < pulley_.body.name || (route && !context_.wants(*route));
  }

  double reach_in() const {
    return std::hypot(pulley_.body.rim_radius_in, pulley_.body.width_in / 2) + beside_pulley_in +
           prepared_.project->build_tolerance_in;
  }

  void consider(const Obstacle& obstacle) {
    if (!counts(obstacle)) return;
    if (nearest(pulley_.body.centre, obstacle).distance_in > reach_in()) return;
    if (prepared_.pulley_of(obstacle.part)) return consider_pulley(obstacle.part);
    const Nearest found = nearest(pulley_.body, obstacle);
    const double within_in = beside_pulley_in + prepared_.project->build_tolerance_in;
    if (found.distance_in > within_in) return;
    const double least_in = nearest(least_, obstacle).distance_in;
    Beside& known = beside_[obstacle.part];
    known.least_gap_in = std::min(known.least_gap_in, least_in);
    if (found.distance_in >= known.gap_in) return;
    known.gap_in = found.distance_in;
    known.obstacle = obstacle;
    known.at = found.on_first;
  }

  /// Two pulleys by what is stated of both. On one spindle, where what is between them keeps them
  /// apart, no tolerance counts.
  void consider_pulley(int part) {
    if (beside_.count(part) != 0) return;
    const RoutePulley& other = *prepared_.pulley_of(part);
    const PulleyBody least_other = least_of(other);
    const Nearest near = nearest(least_, least_other);
    Beside found;
    found.gap_in = near.distance_in;
    found.at = near.on_first;
    found.obstacle.part = part;
    if (share_a_spindle(other.body, pulley_.body)) {
      const Vec3 apart = other.body.centre - pulley_.body.centre;
      found.gap_in = std::abs(dot(apart, pulley_.body.axis)) -
                     (least_other.width_in + least_.width_in) / 2 +
                     prepared_.project->build_tolerance_in;
    }
    found.least_gap_in = found.gap_in;
    if (found.gap_in <= beside_pulley_in + prepared_.project->build_tolerance_in)
      beside_[part] = found;
  }

  void look_round() {
    const Vec3 centre = pulley_.body.centre;
    prepared_.obstacles.visit_near({centre, centre}, reach_in(),
                                   [&](const Obstacle& each, bool) { consider(each); });
  }

  const RuleContext& context_;
  const PreparedProject& prepared_;
  const RoutePulley& pulley_;
  PulleyBody least_;
  std::optional<int> held_by_;
  std::map<int, Beside> beside_;
};

double along_in(const PreparedRoute& route, const RoutePulley& pulley) {
  const auto index = &point_of(pulley) - route.route->points.data();
  return route.point_distance_in[static_cast<std::size_t>(index)];
}

std::string unstated_size(const RoutePoint& point) {
  if (!point.width_in && !point.outside_in) return "`outside` and `width` are not stated";
  return point.width_in ? "`outside` is not stated" : "`width` is not stated";
}

Judgement judge_beside(const RuleContext& context, const PreparedRoute& route,
                       const RoutePulley& pulley, const Beside& beside) {
  const RoutePoint& point = point_of(pulley);
  const Part& part =
      context.prepared.obstacles.parts()[static_cast<std::size_t>(beside.obstacle.part)];
  const double tolerance_in = context.prepared.project->build_tolerance_in;
  Judgement judgement = context.at(route, along_in(route, pulley));
  judgement.location = point.where;
  judgement.with = part.name;
  judgement.at = beside.at;
  const std::string what = obstacle_words(part, beside.obstacle, context.phrasing);
  const double free_in = beside.gap_in - tolerance_in;
  const double least_free_in = beside.least_gap_in - tolerance_in;
  const bool stands_free = free_in >= -limit_rounding;
  if (!stands_free && least_free_in >= -limit_rounding) {
    leave_unknown(judgement, pulley_overlap);
    judgement.message = "whether " + pulley.body.name + " is in " + what + " is not known: its " +
                        unstated_size(point);
    judgement.mend = "state the diameter over its flanges, `outside`, and its `width`";
    return judgement;
  }
  if (holds(judgement, stands_free ? free_in : least_free_in, {pulley_overlap})) {
    judgement.message = pulley.body.name + " stands clear of " + what;
    return judgement;
  }
  judgement.message = pulley.body.name + " can be in " + what;
  judgement.mend = "move it by " +
                   context.phrasing.length_up(Limit(pulley_overlap).lacking(least_free_in)) +
                   " or more";
  if (part.kind != PartKind::pulley && !part.moves)
    judgement.mend += ", or cut a hole for it; if " + part.name +
                      " is what holds the pulley, name it in the point's `to`";
  return judgement;
}

void judge_pulley_body(const RuleContext& context, const PreparedRoute& route,
                       const RoutePulley& pulley, std::vector<Judgement>& judgements) {
  const PulleySurvey survey(context, pulley);
  const Beside* nearest_free = nullptr;
  bool stands_free = true;
  for (const auto& [part, beside] : survey.beside()) {
    Judgement judgement = judge_beside(context, route, pulley, beside);
    if (judgement.verdict != Verdict::pass) {
      stands_free = false;
      judgements.push_back(std::move(judgement));
    }
    if (!nearest_free || beside.gap_in < nearest_free->gap_in) nearest_free = &beside;
  }
  if (stands_free && nearest_free)
    judgements.push_back(judge_beside(context, route, pulley, *nearest_free));
}

/// Of a pulley whose place nobody knows: the cable runs straight by it, and its centre is not
/// given.
std::optional<Judgement> judge_straight_by(const RuleContext& context, const PreparedRoute& route,
                                           std::size_t index) {
  const RoutePoint& point = route.route->points[index];
  const auto& pulleys = context.prepared.pulleys;
  if (point.hold != HoldKind::pulley || !point.diameter_in ||
      std::any_of(pulleys.begin(), pulleys.end(),
                  [&](const RoutePulley& pulley) { return &point_of(pulley) == &point; }))
    return std::nullopt;
  Judgement judgement = context.at(route, route.point_distance_in[index]);
  judgement.location = point.where;
  leave_unknown(judgement, pulley_overlap);
  judgement.message =
      "the cable does not turn on the pulley: on which side of it that is, and what it could be "
      "in, is not known";
  judgement.mend = "give the pulley by its centre, `given: centre`, or leave it out";
  return judgement;
}

}  // namespace

std::vector<Judgement> judge_pulley_bodies(const RuleContext& context, const PreparedRoute& route) {
  std::vector<Judgement> judgements;
  for (const RoutePulley& pulley : context.prepared.pulleys)
    if (pulley.route == route.route && !context.is_passed_over(route, along_in(route, pulley)))
      judge_pulley_body(context, route, pulley, judgements);
  for (std::size_t i = 0; i < route.route->points.size(); ++i)
    if (!context.is_passed_over(route, route.point_distance_in[i]))
      if (auto unknown = judge_straight_by(context, route, i))
        judgements.push_back(*std::move(unknown));
  return judgements;
}

}  // namespace linewright
