#include "rules/cable/control_pair.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "lines/arm_circle.hpp"
#include "lines/motion/tension_change.hpp"
#include "lines/own_arm.hpp"

namespace linewright {

namespace {

/// Their arms' lengths about a shaft that both turn on.
struct ArmsOnShaft {
  double first_in = 0;
  double second_in = 0;
  std::string words;  ///< "column-upper and column-lower turn on one shaft"
};

bool on_one_shaft(const Arm& first, const Arm& second) {
  const Vec3 axis = unit(first.axis);
  return norm(cross(axis, unit(second.axis))) <= std::sin(same_axis_within_rad) &&
         norm(cross(axis, second.pivot - first.pivot)) <= same_axis_within_in;
}

/// Of several pairs of arms the first by name, whichever end the cables are written from.
std::optional<ArmsOnShaft> arms_of(const PreparedRoute& first, const PreparedRoute& second) {
  std::optional<ArmsOnShaft> found;
  for (const Node* one : {first.from, first.to})
    for (const Node* other : {second.from, second.to}) {
      if (!one->arm || !other->arm || !on_one_shaft(*one->arm, *other->arm)) continue;
      const std::string words = one->name + " and " + other->name + " turn on one shaft";
      if (found && found->words <= words) continue;
      found = ArmsOnShaft{circle_of(*one->arm, one->at).radius_in,
                          circle_of(*other->arm, other->at).radius_in, words};
    }
  return found;
}

Judgement begun(const RuleContext& context, const PreparedRoute& route,
                const SourceLocation& where) {
  Judgement judgement = context.at(route, route.length_in() / 2);
  judgement.location = where;
  return judgement;
}

/// Another cable of its control that moves; nullptr for none.
const PreparedRoute* moving_partner(const RuleContext& context, const PreparedRoute& route) {
  const auto& routes = context.prepared.routes;
  const auto found = std::find_if(routes.begin(), routes.end(), [&](const PreparedRoute& other) {
    return work_together(route, other) && other.moves && !other.stays();
  });
  return found == routes.end() ? nullptr : &*found;
}

/// Of a cable whose travel is stated as none.
Judgement judge_still(const RuleContext& context, const PreparedRoute& route) {
  Judgement judgement = begun(context, route, route.route->travel->where);
  const std::string control = "control " + route.route->control;
  if (const PreparedRoute* partner = moving_partner(context, route)) {
    leave_unknown(judgement, control_moves);
    judgement.with = partner->route->name;
    judgement.message = "its travel is stated as none, while " + partner->route->name +
                        ", which works " + control + " with it, moves: which is so is not known";
    judgement.mend = "state the travel of both, or give them different controls";
    return judgement;
  }
  holds_true(judgement, false, control_moves);
  judgement.message = "it works " + control + ", and its travel is stated as none: " +
                      "all that it could foul in moving is not judged";
  judgement.mend = "state how far it moves, or waive this with the reason";
  return judgement;
}

double all_travel_in(const Route& route) {
  return route.travel->forward_in + route.travel->aft_in;
}

double ratio_of(double a, double b) {
  return std::max(a, b) / std::min(a, b);
}

std::optional<Judgement> judge_travels(const RuleContext& context, const PreparedRoute& first,
                                       const PreparedRoute& second, const ArmsOnShaft& arms) {
  if (!first.moves || !second.moves || first.stays() || second.stays()) return std::nullopt;
  Judgement judgement = begun(context, second, second.route->travel->where);
  judgement.with = first.route->name;
  const double first_in = all_travel_in(*first.route);
  const double second_in = all_travel_in(*second.route);
  const bool alike = holds(
      judgement, ratio_of(first_in / arms.first_in, second_in / arms.second_in), {travels_apart});
  const Phrasing& phrasing = context.phrasing;
  judgement.message = arms.words + (alike ? ", and" : ", but not by") + " the travels of " +
                      first.route->name + ", " + phrasing.length(first_in) + " in all, and " +
                      second.route->name + ", " + phrasing.length(second_in) +
                      (alike ? ", fit each other" : ", alike");
  if (!alike) judgement.mend = "state the travel that each has, or the arms that they are on";
  return judgement;
}

std::optional<Judgement> judge_tensions(const RuleContext& context, const PreparedRoute& first,
                                        const PreparedRoute& second, const ArmsOnShaft& arms) {
  if (!first.route->tension || !second.route->tension) return std::nullopt;
  const double first_lbf = first.route->tension->rigged_lbf;
  const double second_lbf = second.route->tension->rigged_lbf;
  if (first_lbf <= 0 || second_lbf <= 0) return std::nullopt;
  Judgement judgement = begun(context, second, second.route->tension->where);
  judgement.with = first.route->name;
  const bool alike =
      holds(judgement, ratio_of(first_lbf * arms.first_in, second_lbf * arms.second_in),
            {tensions_apart});
  judgement.message = arms.words + ", and " + first.route->name +
                      fmt::format(", rigged to {:.0f} lbf, and ", first_lbf) + second.route->name +
                      fmt::format(", {:.0f} lbf, ", second_lbf) +
                      (alike ? "hold it still" : "do not hold it still between them");
  if (!alike)
    judgement.mend =
        "rig both so that tension times arm is alike, or waive this with the reason, "
        "such as a spring";
  return judgement;
}

void judge_pair(const RuleContext& context, const PreparedRoute& first, const PreparedRoute& second,
                std::vector<Judgement>& judgements) {
  const auto arms = arms_of(first, second);
  if (!arms || arms->first_in <= 0 || arms->second_in <= 0) return;
  for (auto& judgement : {judge_travels(context, first, second, *arms),
                          judge_tensions(context, first, second, *arms)})
    if (judgement) judgements.push_back(*judgement);
}

}  // namespace

std::vector<Judgement> judge_control_pairs(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes) {
    if (route.line->kind != LineKind::cable || route.route->control.empty()) continue;
    if (route.route->travel && route.stays()) judgements.push_back(judge_still(context, route));
    // Each pair once, whichever stands first in the files.
    for (const PreparedRoute& other : context.prepared.routes)
      if (work_together(route, other) && other.route->name < route.route->name)
        judge_pair(context, other, route, judgements);
  }
  return judgements;
}

}  // namespace linewright
