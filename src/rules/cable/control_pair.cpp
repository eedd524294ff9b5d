#include "rules/cable/control_pair.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

#include "lines/arm_circle.hpp"
#include "lines/motion/tension_change.hpp"
#include "lines/own_arm.hpp"
#include "lines/rod_way.hpp"

namespace linewright {

namespace {

/// The sine of the least angle at which a cable pulls on its arm for it to be told by its travel
/// how far the arm turns: 30 degrees.
constexpr double least_square = 0.5;
/// Turns that differ by less are one, 0.6 degrees: travels are stated to a tenth of an inch.
constexpr double least_turn_rad = 0.01;

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

/// How far a shaft turns to either side, by the right-hand rule about an axis, radians.
struct ShaftTurns {
  double least_rad = 0;
  double most_rad = 0;
};

/// By the travel of a rod whose way is known: the arm at its other end follows.
std::optional<ShaftTurns> turns_by_rod(const PreparedRoute& route, const Node& node) {
  const RodWay way = rod_way(route);
  if (way.fault != RodFault::none) return std::nullopt;
  ShaftTurns turns;
  for (const RodPlace& place : way.places) {
    const double turned_rad =
        std::remainder(&node == route.from ? place.from_rad : place.to_rad, 2 * std::numbers::pi);
    turns.least_rad = std::min(turns.least_rad, turned_rad);
    turns.most_rad = std::max(turns.most_rad, turned_rad);
  }
  return turns;
}

/// The moment that each pound in a cable has about an arm's axis at one of its ends, inches.
/// Nothing where it does not pull at 30 degrees or more on that arm.
std::optional<double> lever_in(const PreparedRoute& route, const Node& node) {
  const ArmCircle arm = circle_of(*node.arm, node.at);
  const Centreline& line = route.centreline;
  const Vec3 pull = &node == route.from ? line.direction(0) : -line.direction(line.length_in());
  const double square = dot(arm.way_at(0), pull);
  if (arm.radius_in <= 0 || std::abs(square) < least_square) return std::nullopt;
  return arm.radius_in * square;
}

/// By the travel of a cable. Nothing where it does not pull at 30 degrees or more on its arm.
std::optional<ShaftTurns> turns_by_cable(const PreparedRoute& route, const Node& node) {
  const auto lever = lever_in(route, node);
  if (!lever) return std::nullopt;
  // At `from` a cable pulls the way that its travel toward `to` goes.
  const double along_in = &node == route.from ? *lever : -*lever;
  const double toward_from_rad = -route.moves->toward_from_in / along_in;
  const double toward_to_rad = route.moves->toward_to_in / along_in;
  return ShaftTurns{std::min(toward_from_rad, toward_to_rad),
                    std::max(toward_from_rad, toward_to_rad)};
}

std::optional<ShaftTurns> turns_of(const PreparedRoute& route, const Node& node, Vec3 axis) {
  const auto turns =
      route.line->kind == LineKind::rod ? turns_by_rod(route, node) : turns_by_cable(route, node);
  if (!turns || dot(node.arm->axis, axis) > 0) return turns;
  return ShaftTurns{-turns->most_rad, -turns->least_rad};
}

bool turn_alike(const ShaftTurns& first, const ShaftTurns& second) {
  const auto is_apart = [](double a_rad, double b_rad) {
    const double less = std::min(std::abs(a_rad), std::abs(b_rad));
    const double more = std::max(std::abs(a_rad), std::abs(b_rad));
    return more > travels_apart.value * less + least_turn_rad;
  };
  return !is_apart(first.least_rad, second.least_rad) && !is_apart(first.most_rad, second.most_rad);
}

bool is_horn_on_shaft(const Node& node, const Node& of_shaft) {
  return node.kind == NodeKind::horn && node.arm && on_one_shaft(*of_shaft.arm, *node.arm);
}

/// Every horn of one line with each of another that is on the same shaft.
std::vector<std::pair<const Node*, const Node*>> horns_on_one_shaft(const PreparedRoute& first,
                                                                    const PreparedRoute& second) {
  std::vector<std::pair<const Node*, const Node*>> pairs;
  for (const Node* one : {first.from, first.to})
    for (const Node* other : {second.from, second.to})
      if (one->arm && is_horn_on_shaft(*one, *one) && is_horn_on_shaft(*other, *one))
        pairs.emplace_back(one, other);
  return pairs;
}

/// Of two cables or rods whose horns are on one shaft: they turn it to either side as far. Pedals
/// beside each other turn each by itself, whatever their axes.
std::optional<Judgement> judge_directions(const RuleContext& context, const PreparedRoute& first,
                                          const PreparedRoute& second) {
  if (!first.moves || !second.moves || first.stays() || second.stays()) return std::nullopt;
  for (const auto& [one, other] : horns_on_one_shaft(first, second)) {
    const auto of_first = turns_of(first, *one, one->arm->axis);
    const auto of_second = turns_of(second, *other, one->arm->axis);
    if (!of_first || !of_second || turn_alike(*of_first, *of_second)) continue;
    Judgement judgement = begun(context, second, second.route->travel->where);
    judgement.with = first.route->name;
    leave_unknown(judgement, travels_apart);
    judgement.message = one->name + " and " + other->name +
                        " turn on one shaft, and the travels of " + first.route->name + " and " +
                        second.route->name +
                        " do not turn it to either side alike: which is so is not known";
    judgement.mend =
        "state of each how far it goes forward and aft: where one goes forward, the "
        "other goes aft, or forward with it, as their arms take them";
    return judgement;
  }
  return std::nullopt;
}

/// 1 where two axes point one way, -1 where against each other.
double same_way(const Node& first, const Node& second) {
  return dot(first.arm->axis, second.arm->axis) > 0 ? 1 : -1;
}

/// True where nothing but the two can hold the shaft of `one`, which they both pull the way that
/// `lever` is of.
bool nothing_pulls_back(const RuleContext& context, const PreparedRoute& first,
                        const PreparedRoute& second, const Node& one, double lever) {
  for (const PreparedRoute& other : context.prepared.routes) {
    if (&other == &first || &other == &second || !works_control(other.line->kind)) continue;
    for (const Node* node : {other.from, other.to}) {
      if (!is_horn_on_shaft(*node, one)) continue;
      if (other.line->kind == LineKind::rod) return false;
      const auto of_other = lever_in(other, *node);
      if (!of_other || *of_other * same_way(one, *node) * lever < 0) return false;
    }
  }
  return true;
}

/// Of two cables of one control that pull a shaft that both have a horn on the same way.
std::optional<Judgement> judge_pulls(const RuleContext& context, const PreparedRoute& first,
                                     const PreparedRoute& second) {
  for (const auto& [one, other] : horns_on_one_shaft(first, second)) {
    const auto of_first = lever_in(first, *one);
    const auto of_second = lever_in(second, *other);
    if (!of_first || !of_second || *of_first * *of_second * same_way(*one, *other) < 0 ||
        !nothing_pulls_back(context, first, second, *one, *of_first))
      continue;
    Judgement judgement = begun(context, second, second.route->where);
    judgement.with = first.route->name;
    holds_true(judgement, false, pulled_back);
    judgement.message = one->name + " and " + other->name + " turn on one shaft, and " +
                        first.route->name + " and " + second.route->name +
                        " both pull it the same way: nothing pulls it back";
    judgement.mend =
        "lead one of them to the other side of the shaft, set its arm right, or waive this with "
        "the reason, such as a spring";
    return judgement;
  }
  return std::nullopt;
}

/// 1 where the shafts at the two ends of a line turn the same way about their arms' axes, -1 where
/// against each other; nothing where that is not known.
std::optional<double> coupling_of(const PreparedRoute& route) {
  if (!route.from->arm || !route.to->arm) return std::nullopt;
  double product = 0;
  if (route.line->kind == LineKind::rod) {
    const RodWay way = rod_way(route);
    if (way.fault != RodFault::none) return std::nullopt;
    for (const RodPlace& place : {way.places.front(), way.places.back()})
      product += place.from_rad * std::remainder(place.to_rad, 2 * std::numbers::pi);
  } else {
    const auto at_from = lever_in(route, *route.from);
    const auto at_to = lever_in(route, *route.to);
    // What pulls the one end lets the other go.
    if (at_from && at_to) product = -*at_from * *at_to;
  }
  if (product == 0) return std::nullopt;
  return product > 0 ? 1 : -1;
}

/// Of two lines between the same two shafts, of which one is a rod.
std::optional<Judgement> judge_coupling(const RuleContext& context, const PreparedRoute& other,
                                        const PreparedRoute& rod) {
  const auto of_rod = coupling_of(rod);
  const auto of_other = coupling_of(other);
  if (!of_rod || !of_other) return std::nullopt;
  for (const auto& [from, to] :
       {std::pair(other.from, other.to), std::pair(other.to, other.from)}) {
    if (!is_horn_on_shaft(*from, *rod.from) || !is_horn_on_shaft(*to, *rod.to) ||
        rod.from->kind != NodeKind::horn || rod.to->kind != NodeKind::horn)
      continue;
    if (*of_rod == *of_other * same_way(*rod.from, *from) * same_way(*rod.to, *to)) continue;
    Judgement judgement = begun(context, rod, rod.route->where);
    judgement.with = other.route->name;
    holds_true(judgement, false, turned_alike);
    judgement.message = rod.route->name + " and " + other.route->name +
                        " lead between the same two shafts, and turn that of " + rod.to->name +
                        " opposite ways: they lock it";
    judgement.mend = "set right on which side of its shaft each of their ends is";
    return judgement;
  }
  return std::nullopt;
}

/// Another cable of its control that moves; nullptr for none.
const PreparedRoute* moving_partner(const RuleContext& context, const PreparedRoute& route) {
  const auto& routes = context.prepared.routes;
  const auto found = std::find_if(routes.begin(), routes.end(), [&](const PreparedRoute& other) {
    return work_together(route, other) && other.moves && !other.stays();
  });
  return found == routes.end() ? nullptr : &*found;
}

bool ends_on_what_turns(const PreparedRoute& route) {
  return takes_cable(route.from->kind) || takes_cable(route.to->kind);
}

/// A travel of none of what works a control: it is stated, or taken for one by where it ends.
bool is_stated_still(const PreparedRoute& route) {
  const LineKind kind = route.line->kind;
  const std::optional<Travel>& travel = route.route->travel;
  if (!travel || travel->forward_in > 0 || travel->aft_in > 0) return false;
  if (kind == LineKind::conduit) return true;
  return works_control(kind) && (!route.route->control.empty() || ends_on_what_turns(route));
}

/// Of a line whose travel is stated as none.
Judgement judge_still(const RuleContext& context, const PreparedRoute& route) {
  Judgement judgement = begun(context, route, route.route->travel->where);
  const std::string control =
      route.route->control.empty() ? "a control" : "control " + route.route->control;
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
  auto pulls = judge_pulls(context, first, second);
  const auto travels = judge_travels(context, first, second, *arms);
  if (travels) judgements.push_back(*travels);
  if (travels && travels->verdict == Verdict::pass)
    if (auto unlike = judge_directions(context, first, second)) judgements.push_back(*unlike);
  if (pulls)
    judgements.push_back(*std::move(pulls));
  else if (auto tensions = judge_tensions(context, first, second, *arms))
    judgements.push_back(*tensions);
}

/// True where two lines may work one control: they share its name, or one has none.
bool may_work_together(const Route& first, const Route& second) {
  return first.control.empty() || second.control.empty() ||
         is_same_control(first.control, second.control);
}

/// A rod against the cables that may be of its control, and against the rods that stand before it
/// by name.
void judge_rod(const RuleContext& context, const PreparedRoute& rod,
               std::vector<Judgement>& judgements) {
  for (const PreparedRoute& other : context.prepared.routes) {
    const bool is_rod = other.line->kind == LineKind::rod;
    if ((!is_rod && other.line->kind != LineKind::cable) ||
        !may_work_together(*rod.route, *other.route) ||
        (is_rod && other.route->name >= rod.route->name))
      continue;
    if (auto locked = judge_coupling(context, other, rod)) judgements.push_back(*locked);
    if (auto unlike = judge_directions(context, other, rod)) judgements.push_back(*unlike);
  }
}

}  // namespace

std::vector<Judgement> judge_control_pairs(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes) {
    if (is_stated_still(route)) judgements.push_back(judge_still(context, route));
    if (route.line->kind == LineKind::rod) judge_rod(context, route, judgements);
    if (route.line->kind != LineKind::cable || route.route->control.empty()) continue;
    // Each pair once, whichever stands first in the files.
    for (const PreparedRoute& other : context.prepared.routes)
      if (work_together(route, other) && other.route->name < route.route->name)
        judge_pair(context, other, route, judgements);
  }
  return judgements;
}

}  // namespace linewright
