#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "lines/arm_swing.hpp"
#include "lines/cable_travel.hpp"
#include "model/angle.hpp"
#include "physics/cable.hpp"
#include "rules/line/arm_sweep.hpp"
#include "rules/line/hose_planes.hpp"
#include "rules/line/port_angle.hpp"
#include "rules/rule.hpp"
#include "rules/words/swung_end.hpp"

namespace linewright {

namespace {

constexpr LimitRow bends_overlap{.name = "overlap",
                                 .subject = "what arcs leave of the legs they share",
                                 .value = 0,
                                 .source = "geometry",
                                 .mark = Mark::calculated};
constexpr LimitRow plastic_straight{
    .name = "plastic-tube-straight",
    .subject = "straight at a fitting or between bends, plastic tube",
    .value = 1,
    .source = "a pneumatic-valve user manual, section on piping: one OD straight before bending",
    .mark = Mark::verified,
    .times = "outside diameter"};
constexpr LimitRow metal_fitting_straight{.name = "metal-tube-straight-at-fitting",
                                          .subject = "straight at a fitting, metal tube",
                                          .value = 2,
                                          .source = "nut and sleeve length",
                                          .mark = Mark::common_practice,
                                          .broken = Verdict::warn,
                                          .times = "outside diameter"};
constexpr LimitRow metal_bend_straight{.name = "metal-tube-straight-between-bends",
                                       .subject = "straight between bends, metal tube",
                                       .value = 1,
                                       .source = "what a bender grips",
                                       .mark = Mark::common_practice,
                                       .broken = Verdict::warn,
                                       .times = "outside diameter"};
constexpr LimitRow support_offset{.name = "support-off-line",
                                  .subject = "support away from the line as bent",
                                  .value = 0.06,
                                  .sense = LimitSense::at_most,
                                  .source = "clamps sit on straights",
                                  .mark = Mark::common_practice,
                                  .broken = Verdict::warn};
constexpr LimitRow unguided_turn{.name = "unguided-cable-turn",
                                 .subject = "turn of a cable where nothing guides it",
                                 .value = 0,
                                 .unit = Unit::degree,
                                 .sense = LimitSense::at_most,
                                 .source = "a cable under tension runs straight between its guides",
                                 .mark = Mark::calculated};
constexpr LimitRow turn_holds{.name = "sleeve-turn-holds",
                              .subject = "sides of a turn on which structure holds its sleeve",
                              .value = 2,
                              .unit = Unit::none,
                              .source = "a sleeve held on one side gives way on the other",
                              .mark = Mark::common_practice,
                              .broken = Verdict::warn};
constexpr LimitRow missed_groove{
    .name = "missed-groove",
    .subject = "pulleys that the cable cannot go round as the axis says",
    .value = 0,
    .unit = Unit::none,
    .sense = LimitSense::at_most,
    .source = "a taut cable leaves a groove along its tangents",
    .mark = Mark::calculated};
constexpr LimitRow arm_travel{.name = "arm-travel",
                              .subject = "travel that an arm gives its cable",
                              .value = 1,
                              .source = "an arm moves its cable by twice its length at the most",
                              .mark = Mark::calculated,
                              .times = "travel stated"};

constexpr auto bend_fit_limits =
    limit_table({bends_overlap, plastic_straight, metal_fitting_straight, metal_bend_straight,
                 support_offset, unguided_turn, turn_holds, missed_groove, arm_travel, arm_sweep,
                 clamp_between_planes, port_angle, tube_bend_in_port, hose_bend_in_port});

/// The straight wanted before a bend, or after the last one; nothing for limp lines.
const LimitRow* straight_row(LineKind kind, bool at_fitting) {
  if (kind == LineKind::plastic_tube) return &plastic_straight;
  if (kind != LineKind::rigid_tube) return nullptr;
  return at_fitting ? &metal_fitting_straight : &metal_bend_straight;
}

/// A straight that ends `end_in` along the line, judged at its middle.
Judgement judge_straight(const RuleContext& context, const PreparedRoute& route, double straight_in,
                         double end_in, const std::string& where, bool at_fitting) {
  Judgement judgement = context.at(route, end_in - std::max(0.0, straight_in) / 2);
  const LimitRow* row = straight_row(route.line->kind, at_fitting);
  const Limit wanted = row ? *row * route.line->outside_diameter_in : Limit(bends_overlap);
  const Phrasing& phrasing = context.phrasing;
  const std::string lacking = phrasing.length_up(wanted.lacking(straight_in));
  if (holds(judgement, straight_in, {bends_overlap, wanted})) {
    judgement.message = "the straight " + where + " is long enough";
  } else if (judgement.limit == bends_overlap.value) {
    judgement.message =
        "the bend does not fit: it lacks " + phrasing.length(-straight_in) + " " + where;
    judgement.mend = "move the corners " + lacking +
                     " farther apart, or bend to a smaller radius if the line stands it";
  } else {
    judgement.message = "only " + phrasing.length(straight_in) + " straight " + where;
    judgement.mend = "move the corner " + lacking + " farther along";
  }
  return judgement;
}

std::string point_words(int corner) {
  return "point " + std::to_string(corner);
}

/// A bend that has no room although the straights beside it are left: a neighbouring point stands
/// inside it, or the line doubles back.
Judgement judge_lost_radius(const RuleContext& context, const PreparedRoute& route,
                            const Bend& bend) {
  Judgement judgement = context.at(route, bend.start_in);
  const bool doubles_back = bend.tangent_in <= 0;
  // A line that doubles back may have no radius to lose.
  if (doubles_back && bend.drawn_radius_in <= limit_rounding)
    holds_true(judgement, false, bends_overlap);
  else
    holds(judgement, bend.built_radius_in, {Limit(bend.drawn_radius_in, bends_overlap)});
  if (doubles_back) {
    judgement.message = "the line doubles back on itself at " + point_words(bend.corner);
    judgement.mend = "draw the turn with two corners, a diameter apart";
    return judgement;
  }
  judgement.message = "a neighbouring point stands inside the bend at " + point_words(bend.corner);
  judgement.mend =
      "keep points " + context.phrasing.length_up(bend.tangent_in) + " away from the corner";
  return judgement;
}

Judgement judge_bend(const RuleContext& context, const PreparedRoute& route,
                     const std::vector<Bend>& bends, std::size_t index) {
  const Bend& bend = bends[index];
  const bool first = index == 0;
  const std::string where =
      first ? "between " + route.from->name + " and the bend at " + point_words(bend.corner)
            : "between the bends at " + point_words(bends[index - 1].corner) + " and " +
                  point_words(bend.corner);
  const double straight_after = index + 1 < bends.size()
                                    ? bends[index + 1].straight_before_in
                                    : route.centreline.straight_after_made_in();
  const bool loses_radius = !bend.fits && bend.straight_before_in >= 0 && straight_after >= 0;
  Judgement judgement =
      judge_straight(context, route, bend.straight_before_in, bend.start_in, where, first);
  if (loses_radius) {
    const Judgement lost = judge_lost_radius(context, route, bend);
    if (lost.verdict != Verdict::pass) judgement = lost;
  }
  judgement.location = route.route->points[static_cast<std::size_t>(bend.corner) - 1].where;
  return judgement;
}

/// "it bears 200.0 lbf across (2 T sin 30.0 deg) with 200.0 lbf in the cable", or what is missing.
std::string side_load_words(const RuleContext& context, const PreparedRoute& route,
                            const Bend& bend) {
  const std::optional<double> most = context.motion.cables[context.index_of(route)].most_lbf();
  if (!most) return "what it bears across is not known: the cable's tension is not stated";
  return fmt::format("it bears {:.0f} lbf across with {:.0f} lbf in the cable",
                     guide_push_lbf(*most, bend.angle_rad), *most);
}

/// A sleeve that structure holds leads a cable round the turns in it.
Judgement judge_sleeved_turn(const RuleContext& context, const SleevedTurn& turn,
                             const PreparedRoute& route, const Bend& bend, Judgement judgement) {
  const std::string leads = "the sleeve leads the cable round " +
                            context.phrasing.angle(bend.angle_rad * degrees_per_radian);
  const std::string bears = "; " + side_load_words(context, route, bend) +
                            ", and so does what holds it, whose strength is not judged";
  if (holds(judgement, turn.is_led() ? 2 : 1, {turn_holds})) {
    judgement.message = leads + ", held by the " + turn.before +
                        (turn.before == turn.after ? "" : " and the " + turn.after) + bears;
    return judgement;
  }
  const bool before = !turn.before.empty();
  judgement.message = leads + ", held by the " + (before ? turn.before : turn.after) + " " +
                      (before ? "before" : "after") + " the turn, by nothing " +
                      (before ? "after" : "before") + " it" + bears;
  judgement.mend = std::string("clamp the sleeve to structure ") + (before ? "after" : "before") +
                   " the turn, too, or put a pulley there";
  return judgement;
}

/// A cable turns only where something guides it.
std::optional<Judgement> judge_cable_corner(const RuleContext& context, const PreparedRoute& route,
                                            const Bend& bend) {
  const RoutePoint& point = route.route->points[static_cast<std::size_t>(bend.corner) - 1];
  if (point.hold && *point.hold != HoldKind::clamp) return std::nullopt;
  Judgement judgement = context.at(route, bend.middle_in());
  judgement.location = point.where;
  const double angle_deg = bend.angle_rad * degrees_per_radian;
  if (holds(judgement, angle_deg, {unguided_turn})) return std::nullopt;
  const auto turn = context.motion.sleeves[context.index_of(route)].turn_in(bend);
  if (turn && turn->is_held()) return judge_sleeved_turn(context, *turn, route, bend, judgement);
  judgement.message = "the cable turns " + context.phrasing.angle(angle_deg) +
                      " where no pulley or fairlead guides it";
  if (!turn) {
    judgement.mend = "put a pulley or fairlead there, or draw the cable straight";
    return judgement;
  }
  judgement.message += ": nothing holds the sleeve to structure, and stops on the cable do not; " +
                       side_load_words(context, route, bend);
  judgement.mend = "put a pulley there, or clamp the sleeve to structure on both sides of the turn";
  return judgement;
}

/// A clamp drawn on a corner is beside the arc that the line takes there.
std::optional<Judgement> judge_support_on_bend(const RuleContext& context,
                                               const PreparedRoute& route, const Bend& bend) {
  const RoutePoint& point = route.route->points[static_cast<std::size_t>(bend.corner) - 1];
  if (!point.hold || *point.hold == HoldKind::pulley) return std::nullopt;
  // Without a radius the line's place is not known: bend-radius says so.
  if (bend.drawn_radius_in <= 0) return std::nullopt;
  Judgement judgement = context.at(route, bend.middle_in());
  judgement.location = point.where;
  const double offset = distance(point.at, route.centreline.at(bend.middle_in()));
  if (holds(judgement, offset, {support_offset})) {
    judgement.message = "the support at " + point_words(bend.corner) + " sits on the line";
    return judgement;
  }
  judgement.message = "the support at " + point_words(bend.corner) + " is drawn on a corner, " +
                      context.phrasing.length(offset) + " away from the line as bent";
  const Phrasing& phrasing = context.phrasing;
  judgement.mend = "move the support to the straight before " +
                   phrasing.tape(phrasing.tape_down(bend.start_in)) + " or after " +
                   phrasing.tape(phrasing.tape_up(bend.end_in)) + " from " + route.from->name;
  return judgement;
}

/// A pulley given by its centre that no taut path goes round as its axis says.
Judgement judge_wrap_fault(const RuleContext& context, const PreparedRoute& route,
                           std::size_t index, WrapFault fault) {
  Judgement judgement = context.at(route, route.point_distance_in[index]);
  judgement.location = route.route->points[index].where;
  holds_true(judgement, false, missed_groove);
  const std::string pulley = "the pulley at " + point_words(static_cast<int>(index) + 1);
  if (fault == WrapFault::no_tangent) {
    judgement.message = pulley + " cannot be reached: a neighbour lies inside its groove";
    judgement.mend =
        "move the pulley or its neighbour until each lies outside the other's groove, seen along "
        "the axis; legs run near the plane of the pulley";
    return judgement;
  }
  judgement.message = pulley + " is not wrapped as its axis says: the cable misses it, or goes " +
                      "half a turn or more round it";
  judgement.mend =
      "turn the sign of the axis if the cable passes on the other side, leave the pulley out if "
      "the cable misses it, or draw half a turn by two corners, a diameter apart";
  return judgement;
}

/// The travel that an arm gives toward one end of its cable, and the travel stated.
struct ArmWay {
  double gives_in;
  double asked_in;
};

std::array<ArmWay, 2> arm_ways(const PreparedRoute& route, const ArmSwing& swing) {
  const auto asked = route.moves.value_or(Movement{});
  return {{{swing.gives_toward_from_in, asked.toward_from_in},
           {swing.gives_toward_to_in, asked.toward_to_in}}};
}

/// A cable's end on an arm that cannot turn as far as the cable is said to travel.
void judge_arms(const RuleContext& context, const PreparedRoute& route,
                std::vector<Judgement>& judgements) {
  for (const RouteEnd end : {RouteEnd::from, RouteEnd::to}) {
    const auto swing = arm_swing(route, end);
    if (!swing || swing->reaches) continue;
    const bool at_start = end == RouteEnd::from;
    const Node& node = at_start ? *route.from : *route.to;
    Judgement judgement = context.at(route, at_start ? 0 : route.length_in());
    judgement.location = at_start ? route.route->from_where : route.route->to_where;
    judgement.with = node.name;
    const auto ways = arm_ways(route, *swing);
    const auto short_by = [](const ArmWay& way) { return way.asked_in - way.gives_in; };
    const ArmWay& worse = short_by(ways[1]) > short_by(ways[0]) ? ways[1] : ways[0];
    if (holds(judgement, worse.gives_in, {arm_travel * worse.asked_in})) continue;
    judgement.message = short_arm_words(route, end, context.phrasing);
    judgement.mend = "state the travel that the arm gives, or its true pivot and axis";
    judgements.push_back(judgement);
  }
}

void judge_route(const RuleContext& context, const PreparedRoute& route,
                 std::vector<Judgement>& judgements) {
  const std::vector<Bend> bends = route.centreline.made_bends();
  const bool cable = route.line->kind == LineKind::cable;
  for (std::size_t i = 0; i < route.wrap_faults.size(); ++i)
    if (route.wrap_faults[i])
      judgements.push_back(judge_wrap_fault(context, route, i, *route.wrap_faults[i]));
  judge_arms(context, route, judgements);
  for (Judgement& judgement : judge_arm_sweeps(context, route))
    judgements.push_back(std::move(judgement));
  judge_port_angles(context, route, judgements);
  if (const auto twisted = judge_hose_planes(context, route)) judgements.push_back(*twisted);
  // A straight beside an arc is judged, whichever end of it the arc is at.
  bool after_arc = false;
  for (std::size_t i = 0; i < bends.size(); ++i) {
    const bool is_arc = bends[i].drawn_radius_in > 0;
    if (after_arc || is_arc || !bends[i].fits)
      judgements.push_back(judge_bend(context, route, bends, i));
    const auto extra = cable ? judge_cable_corner(context, route, bends[i])
                             : judge_support_on_bend(context, route, bends[i]);
    if (extra) judgements.push_back(*extra);
    after_arc = is_arc;
  }
  if (after_arc)
    judgements.push_back(judge_straight(
        context, route, route.centreline.straight_after_made_in(), route.length_in(),
        "between the bend at " + point_words(bends.back().corner) + " and " + route.to->name,
        true));
}

std::vector<Judgement> judge_bend_fit(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes)
    judge_route(context, route, judgements);
  return judgements;
}

}  // namespace

const Rule& bend_fit_rule() {
  static const Rule rule{
      .name = "bend-fit",
      .purpose = "arcs and straights fit between corners, supports and fittings",
      .explanation =
          R"(An arc of radius R that turns by θ takes up R·tan(θ/2) of each leg. Where two arcs
share a leg, or an arc shares it with a fitting, their sum must fit, and the straight that is
left must be long enough for the fitting and the bender. A line leaves
a fitting of known size the way its port points: at more than a few degrees its nut does not go on,
and a bend that begins in the fitting cannot be made. A support drawn on a corner is not on
the line as bent. A cable that turns where nothing guides it is an error of the drawing: cables
run straight between guides. A sleeve over the whole turn guides it if structure holds the
sleeve on both sides of the turn, by a clamp or a close grommet; stops that go with the cable
hold it to nothing, and a pulled cable would straighten it. What the sleeve bears across, 2 T
sin(θ/2), is said, with the highest tension that is known of the cable; `rig` says it of pulleys
and fairleads. Whether they stand it is left to the builder; `sleeve-cover` judges the bend. An `arm` must be able to give its cable the travel stated; one that cannot is taken as
fixed elsewhere, and how far its cable swings is unknown. Where a moving part turns on the arm's
axis, its `sweep` must reach as far as the travel turns the arm, within a degree. A corner that a straight line misses by
less than the build tolerance is neither bend nor turn. A pulley given by its centre must be
one that the taut cable can go round as its axis says, for less than half a turn. A hose that
bends in one plane and then in another is clamped between the two, or it twists.)",
      .mend =
          "Move corners apart, bend to a smaller radius that the line still stands, or move the "
          "support to a straight.",
      .limits = bend_fit_limits,
      .catalogue_limits = "",
      .judge = judge_bend_fit};
  return rule;
}

}  // namespace linewright
