#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "lines/arm_swing.hpp"
#include "model/angle.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

constexpr LimitRow wrap_left{
    .name = "wrap-left-on-sector",
    .subject = "cable on a sector, quadrant or drum at the end of travel that unwinds it",
    .value = 10,
    .unit = Unit::degree,
    .source = "MIL-F-18372 para 3.1.1.17.12",
    .mark = Mark::verified};
constexpr LimitRow bend_at_end{
    .name = "bend-at-end",
    .subject = "angle by which a cable leaves the way its end can turn",
    .value = 3,
    .unit = Unit::degree,
    .sense = LimitSense::at_most,
    .source =
        "MIL-F-18372 above para 3.1.1.17.8: no critical bend at terminals, drums or horns; "
        "the figure is a fairlead's",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};
constexpr LimitRow turnbuckle_turns{
    .name = "turnbuckle-on-turning-part",
    .subject = "joint of a turnbuckle with a part that turns",
    .value = 1,
    .unit = Unit::none,
    .source = "14 CFR 23.689(e): no binding of turnbuckles on parts that turn",
    .mark = Mark::verified};

constexpr LimitRow moving_end{.name = "moving-end",
                              .subject = "end of a cable that moves, on what goes with it",
                              .value = 1,
                              .unit = Unit::none,
                              .source = "geometry: what is held by structure does not move",
                              .mark = Mark::calculated};

constexpr auto cable_end_limits =
    limit_table({wrap_left, bend_at_end, turnbuckle_turns, moving_end});

/// A turnbuckle that begins this near to a node takes hold of it itself [common practice, no
/// source].
constexpr double turnbuckle_at_node_in = 1;

/// One end of a cable.
struct End {
  const RuleContext& context;
  const PreparedRoute& route;
  RouteEnd which;

  bool at_from() const { return which == RouteEnd::from; }
  const Node& node() const { return at_from() ? *route.from : *route.to; }
  std::optional<EndJoint> joint() const {
    const auto& end = at_from() ? route.route->ends.from : route.route->ends.to;
    return end ? end->joint : std::nullopt;
  }
  Judgement judgement() const {
    Judgement judgement = context.at(route, at_from() ? 0 : route.length_in());
    judgement.with = node().name;
    judgement.location = at_from() ? route.route->from_where : route.route->to_where;
    return judgement;
  }
};

/// Moving away from the sector, the cable comes off it; the other way it winds up more.
Judgement judge_sector(const End& end) {
  const Sector& sector = *end.node().sector;
  Judgement judgement = end.judgement();
  if (!sector.wrap_deg || !end.route.moves) {
    leave_unknown(judgement, wrap_left);
    judgement.limit = wrap_left.value;
    judgement.message = "how much cable stays on the sector of " + end.node().name +
                        " is not known: " +
                        (sector.wrap_deg ? "the travel of " + end.route.route->name
                                         : std::string("its wrap at neutral")) +
                        " is not stated";
    judgement.mend = sector.wrap_deg ? "state the route's travel" : "state the sector's wrap";
    return judgement;
  }
  const double off_in =
      end.at_from() ? end.route.moves->toward_to_in : end.route.moves->toward_from_in;
  const double left_deg = *sector.wrap_deg - off_in / sector.radius_in * degrees_per_radian;
  const Phrasing& phrasing = end.context.phrasing;
  judgement.message = phrasing.length(off_in) + " of travel leave " +
                      phrasing.angle(std::max(0.0, left_deg)) + " of cable on the sector of " +
                      end.node().name;
  if (holds(judgement, left_deg, {wrap_left})) return judgement;
  judgement.mend = "hold the cable " + phrasing.angle(std::ceil(wrap_left.value - left_deg)) +
                   " farther round the sector, or use a larger one";
  return judgement;
}

/// Which way the cable runs from its end, drawn and at both ends of the travel, and by how much its
/// arm has turned until there.
struct Pull {
  Vec3 direction;
  double arm_turned_rad = 0;
};

double turned_rad(Vec3 from, Vec3 to, Vec3 axis) {
  const Vec3 a = from - axis * dot(from, axis);
  const Vec3 b = to - axis * dot(to, axis);
  return std::atan2(dot(cross(a, b), axis), dot(a, b));
}

std::vector<Pull> pulls_of(const End& end) {
  const Arm& arm = *end.node().arm;
  const Vec3 axis = unit(arm.axis);
  const Centreline& line = end.route.centreline;
  const Vec3 drawn = end.at_from() ? line.direction(0) : line.direction(line.length_in()) * -1.0;
  std::vector<Pull> pulls{{drawn, 0}};
  const auto swing = arm_swing(end.route, end.which);
  if (!swing || !swing->reaches) return pulls;
  for (const Vec3 place : {swing->toward_from, swing->toward_to})
    pulls.push_back({unit(swing->start - place),
                     turned_rad(end.node().at - arm.pivot, place - arm.pivot, axis)});
  return pulls;
}

double off_plane_deg(Vec3 direction, Vec3 axis) {
  return std::asin(std::min(1.0, std::abs(dot(direction, axis)))) * degrees_per_radian;
}

/// What an end that is fixed to its arm is bent by: its arm turns, and the cable does not turn with
/// it.
double bent_in_plane_deg(const Pull& drawn, const Pull& pull, Vec3 axis) {
  const double cable = turned_rad(drawn.direction, pull.direction, axis);
  return std::abs(std::remainder(pull.arm_turned_rad - cable, 2 * std::numbers::pi)) *
         degrees_per_radian;
}

double bent_deg(const End& end, EndJoint joint) {
  const Vec3 axis = unit(end.node().arm->axis);
  const std::vector<Pull> pulls = pulls_of(end);
  double most = 0;
  for (const Pull& pull : pulls) {
    most = std::max(most, off_plane_deg(pull.direction, axis));
    if (joint == EndJoint::fixed)
      most = std::max(most, bent_in_plane_deg(pulls.front(), pull, axis));
  }
  return most;
}

/// A ball follows the cable. A pin lies along the arm's axis, and lets it turn in one plane.
Judgement judge_bend_at_end(const End& end) {
  Judgement judgement = end.judgement();
  const EndJoint joint = end.joint().value_or(EndJoint::pin);
  const std::string& name = end.node().name;
  if (joint == EndJoint::ball) {
    holds_true(judgement, true, bend_at_end);
    judgement.message = "the joint at " + name + " turns with the cable, whichever way it pulls";
    return judgement;
  }
  const double deg = bent_deg(end, joint);
  const std::string angle = end.context.phrasing.angle(deg);
  const bool straight = holds(judgement, deg, {bend_at_end});
  judgement.message =
      joint == EndJoint::fixed
          ? "the cable turns by " + angle + " against " + name + ", to which its end is fixed"
          : "the cable leaves the plane in which its end turns at " + name + " by " + angle;
  if (straight) return judgement;
  judgement.mend =
      "fit a joint that turns any way, and state `joint: ball` for that end under the "
      "route's `ends`, beside its kind and what that takes up";
  if (joint == EndJoint::pin) judgement.mend += ", or lead the cable square to the axis of " + name;
  if (end.joint()) return judgement;
  const std::string message = judgement.message;
  const std::string mend = judgement.mend;
  judgement = end.judgement();
  leave_unknown(judgement, bend_at_end);
  judgement.value = deg;
  judgement.limit = bend_at_end.value;
  judgement.message = message + ", if that is a pin: its joint is not stated";
  judgement.mend = mend;
  return judgement;
}

bool has_turnbuckle_at(const End& end) {
  const auto& attached = end.route.route->attached;
  return std::any_of(attached.begin(), attached.end(), [&](const Attachment& each) {
    const double from_node = end.at_from() ? each.at_in : end.route.length_in() - each.at_in;
    return each.is_turnbuckle() && from_node - each.length_in / 2 <= turnbuckle_at_node_in;
  });
}

/// Nothing where no turnbuckle takes hold of the node, or the cable stands still.
std::optional<Judgement> judge_turnbuckle(const End& end) {
  if (end.route.stays() || !has_turnbuckle_at(end)) return std::nullopt;
  Judgement judgement = end.judgement();
  const std::string what = "the turnbuckle at " + end.node().name + ", which turns,";
  if (!end.joint()) {
    leave_unknown(judgement, turnbuckle_turns);
    judgement.message = "whether " + what + " is free to turn with it is not known";
    judgement.mend = "state the joint of that end of the cable: pin or ball";
    return judgement;
  }
  if (holds_true(judgement, end.joint() != EndJoint::fixed, turnbuckle_turns)) {
    judgement.message = what + " is on a joint that turns";
  } else {
    judgement.message = what + " is fixed to it, and binds";
    judgement.mend = "fit it by a fork on a pin, or a ball, or move it away from there";
  }
  return judgement;
}

/// Held there by a spring, which is written as an end that is fixed; one of its two ends at the
/// most, or nothing would move it.
bool gives_by_a_spring(const End& end) {
  const Node& other = end.at_from() ? *end.route.to : *end.route.from;
  return end.node().kind == NodeKind::end && takes_cable(other.kind);
}

/// Nothing for the end of a cable that is not stated to move, and on what may go with it.
std::optional<Judgement> judge_held_end(const End& end) {
  if (!end.route.moves || end.route.stays() || !end.node().held() || gives_by_a_spring(end))
    return std::nullopt;
  Judgement judgement = end.judgement();
  holds_true(judgement, false, moving_end);
  judgement.message = "the cable is stated to move, and its end at " + end.node().name +
                      " is held by structure: it cannot go there";
  judgement.mend = "make " + end.node().name +
                   " a horn or pedal with its `arm`; of a spring that gives, an end with `fixed: "
                   "true`; or state no travel";
  return judgement;
}

std::vector<Judgement> judge_cable_end(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes) {
    if (route.line->kind != LineKind::cable) continue;
    for (const RouteEnd which : {RouteEnd::from, RouteEnd::to}) {
      const End end{context, route, which};
      if (!takes_cable(end.node().kind)) {
        if (const auto held = judge_held_end(end)) judgements.push_back(*held);
        continue;
      }
      if (end.node().sector) judgements.push_back(judge_sector(end));
      if (end.node().arm) judgements.push_back(judge_bend_at_end(end));
      if (const auto turnbuckle = judge_turnbuckle(end)) judgements.push_back(*turnbuckle);
    }
  }
  return judgements;
}

/// Ends of cables that move, on what neither turns nor carries them as far as is stated.
std::vector<Judgement> cable_end_lacking(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes) {
    if (route.line->kind != LineKind::cable || route.stays()) continue;
    for (const RouteEnd which : {RouteEnd::from, RouteEnd::to}) {
      const End end{context, route, which};
      const Node& node = end.node();
      if (!takes_cable(node.kind) || node.arm || node.sector) continue;
      Judgement judgement = end.judgement();
      leave_unknown(judgement, bend_at_end);
      judgement.message = "how the cable goes with " + node.name +
                          " is not known: neither its `arm` nor its `sector` is stated";
      judgement.mend = "state what " + node.name + " turns on, or what its cable lies on";
      judgements.push_back(judgement);
    }
  }
  return judgements;
}

}  // namespace

const Rule& cable_end_rule() {
  static const Rule rule{
      .name = "cable-end",
      .purpose = "a cable's ends turn with the horn or pedal they pull, and stay on their sector",
      .explanation =
          R"(Four things are judged where a cable ends on a horn or pedal, or does not. A `sector` (quadrant or
drum) that the cable lies on must keep some of it at the end of the travel that unwinds it: its
`wrap` at neutral less the travel over its radius. Where the node's `arm` is stated, the cable must
not be bent at its end: the `joint` of that end is a pin that lies along the arm's axis (taken where
none is stated), which lets the end turn in one plane, a ball, which lets it turn any way, or fixed.
The angle is judged as drawn and at both ends of the travel. A cable that moves does not end on what
structure holds; its other end on a horn or pedal, one may be a spring's, an `end` with `fixed: true`. A turnbuckle within 1 in of a horn or
pedal is fitted to it, and must be free to turn on it. A horn or pedal with neither arm nor sector
is not judged; asked for alone, the rule then answers unknown.)",
      .mend = "Fit ends that turn, lead the cable square to the arm's axis, hold it farther round.",
      .limits = cable_end_limits,
      .catalogue_limits = "",
      .judge = judge_cable_end,
      .lacking = cable_end_lacking};
  return rule;
}

}  // namespace linewright
