#include "rules/bend_fit.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "geometry/arm_swing.hpp"
#include "geometry/cable_travel.hpp"
#include "model/angle.hpp"
#include "rules/sleeve_bend.hpp"

namespace linewright {

namespace {

constexpr std::array<LimitRow, 5> limits{{
    {"arcs and the legs they share", 0, "in", "geometry", Mark::calculated, Verdict::fail},
    {"straight at a fitting or between bends, plastic tube, per OD", 1, "OD",
     "a pneumatic-valve user manual, section on piping: one OD straight before bending",
     Mark::verified, Verdict::fail},
    {"straight at a fitting, metal tube, per OD", 2, "OD", "nut and sleeve length",
     Mark::common_practice, Verdict::warn},
    {"straight between bends, metal tube, per OD", 1, "OD", "what a bender grips",
     Mark::common_practice, Verdict::warn},
    {"support away from the line as bent", 0.06, "in", "clamps sit on straights",
     Mark::common_practice, Verdict::warn},
}};
constexpr const LimitRow& overlap = limits[0];
constexpr const LimitRow& plastic_straight = limits[1];
constexpr const LimitRow& metal_fitting_straight = limits[2];
constexpr const LimitRow& metal_bend_straight = limits[3];
constexpr const LimitRow& support_offset = limits[4];

/// The straight wanted before a bend, or after the last one; nothing for limp lines.
const LimitRow* straight_row(LineKind kind, bool at_fitting) {
  if (kind == LineKind::plastic_tube) return &plastic_straight;
  if (kind != LineKind::rigid_tube) return nullptr;
  return at_fitting ? &metal_fitting_straight : &metal_bend_straight;
}

Judgement judge_straight(const RuleContext& context, const PreparedRoute& route, double straight_in,
                         double distance_in, const std::string& where, bool at_fitting) {
  Judgement judgement = judgement_at(bend_fit_rule(), route, distance_in);
  const LimitRow* row = straight_row(route.line->kind, at_fitting);
  const double limit = row ? row->value * route.line->outside_diameter_in : 0;
  const Phrasing& phrasing = context.phrasing;
  const std::string lacking = phrasing.length_up(limit - straight_in);
  judgement.value = straight_in;
  judgement.limit = limit;
  judgement.source = cite(straight_in < 0 || !row ? overlap : *row);
  if (straight_in >= limit - limit_rounding_in) {
    judgement.verdict = Verdict::pass;
    judgement.message = "the straight " + where + " is long enough";
  } else if (straight_in < -limit_rounding_in) {
    judgement.verdict = overlap.broken;
    judgement.message =
        "the bend does not fit: it lacks " + phrasing.length(-straight_in) + " " + where;
    judgement.mend = "move the corners " + lacking +
                     " farther apart, or bend to a smaller radius if the line stands it";
  } else {
    judgement.verdict = row->broken;
    judgement.message = "only " + phrasing.length(straight_in) + " straight " + where;
    judgement.mend = "move the corner " + lacking + " farther along";
  }
  return judgement;
}

std::string point_words(int corner) {
  return "point " + std::to_string(corner);
}

Judgement judge_bend(const RuleContext& context, const PreparedRoute& route, std::size_t index) {
  const std::vector<Bend>& bends = route.centreline.bends();
  const Bend& bend = bends[index];
  const bool first = index == 0;
  const std::string where =
      first ? "between " + route.from->name + " and the bend at " + point_words(bend.corner)
            : "between the bends at " + point_words(bends[index - 1].corner) + " and " +
                  point_words(bend.corner);
  Judgement judgement =
      judge_straight(context, route, bend.straight_before_in, bend.start_in, where, first);
  judgement.location = route.route->points[static_cast<std::size_t>(bend.corner) - 1].where;
  const double straight_after = index + 1 < bends.size() ? bends[index + 1].straight_before_in
                                                         : route.centreline.straight_after_in();
  if (bend.fits || bend.straight_before_in < 0 || straight_after < 0) return judgement;
  judgement.verdict = overlap.broken;
  judgement.source = cite(overlap);
  judgement.value = bend.built_radius_in;
  judgement.limit = bend.drawn_radius_in;
  judgement.message =
      bend.tangent_in > 0
          ? "a neighbouring point stands inside the bend at " + point_words(bend.corner)
          : "the line doubles back on itself at " + point_words(bend.corner);
  const double clear = context.phrasing.rounded_up(bend.tangent_in);
  judgement.mend = bend.tangent_in > 0
                       ? "keep points " + context.phrasing.length(clear) + " away from the corner"
                       : "draw the turn with two corners, a diameter apart";
  return judgement;
}

/// A cable turns only where something guides it.
std::optional<Judgement> judge_cable_corner(const RuleContext& context, const PreparedRoute& route,
                                            const Bend& bend) {
  const RoutePoint& point = route.route->points[static_cast<std::size_t>(bend.corner) - 1];
  if (point.hold && *point.hold != HoldKind::clamp) return std::nullopt;
  if (is_led_by_sleeve(route, bend)) return std::nullopt;
  Judgement judgement = judgement_at(bend_fit_rule(), route, bend.middle_in());
  judgement.location = point.where;
  judgement.unit = Unit::degree;
  judgement.sense = LimitSense::at_most;
  judgement.value = bend.angle_rad * degrees_per_radian;
  judgement.limit = 0;
  judgement.verdict = overlap.broken;
  judgement.message = "the cable turns " + context.phrasing.angle(*judgement.value) +
                      " where no pulley or fairlead guides it";
  judgement.source = "a cable under tension runs straight between its guides (calculated)";
  judgement.mend = "put a pulley or fairlead there, or draw the cable straight";
  return judgement;
}

/// A clamp drawn on a corner is beside the arc that the line takes there.
std::optional<Judgement> judge_support_on_bend(const RuleContext& context,
                                               const PreparedRoute& route, const Bend& bend) {
  const RoutePoint& point = route.route->points[static_cast<std::size_t>(bend.corner) - 1];
  if (!point.hold || *point.hold == HoldKind::pulley) return std::nullopt;
  // Without a radius the line's place is not known: bend-radius says so.
  if (bend.drawn_radius_in <= 0) return std::nullopt;
  Judgement judgement = judgement_at(bend_fit_rule(), route, bend.middle_in());
  judgement.location = point.where;
  const double offset = distance(point.at, route.centreline.at(bend.middle_in()));
  judgement.sense = LimitSense::at_most;
  judgement.value = offset;
  judgement.limit = support_offset.value;
  judgement.source = cite(support_offset);
  if (offset <= support_offset.value + limit_rounding_in) {
    judgement.verdict = Verdict::pass;
    judgement.message = "the support at " + point_words(bend.corner) + " sits on the line";
    return judgement;
  }
  judgement.verdict = support_offset.broken;
  judgement.message = "the support at " + point_words(bend.corner) + " is drawn on a corner, " +
                      context.phrasing.length(offset) + " away from the line as bent";
  const Phrasing& phrasing = context.phrasing;
  judgement.mend = "move the support to the straight before " +
                   phrasing.length(phrasing.rounded_down(bend.start_in)) + " or after " +
                   phrasing.length_up(bend.end_in) + " from " + route.from->name;
  return judgement;
}

/// A pulley given by its centre that no taut path goes round as its axis says.
Judgement judge_wrap_fault(const PreparedRoute& route, std::size_t index, WrapFault fault) {
  Judgement judgement = judgement_at(bend_fit_rule(), route, route.point_distance_in[index]);
  judgement.location = route.route->points[index].where;
  judgement.verdict = overlap.broken;
  judgement.source = "a taut cable leaves a groove along its tangents (calculated)";
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

/// "2.05 in toward pedal, asked 5.00 in", for each way that an arm falls short; the worse way's
/// numbers go into the judgement.
std::string shortfall_words(const RuleContext& context, const PreparedRoute& route,
                            const ArmSwing& swing, Judgement& judgement) {
  struct Way {
    double gives_in;
    double asked_in;
    const std::string& node;
  };
  const auto asked = movement(*route.route, *route.line, route.centreline).value_or(Movement{});
  std::string words;
  for (const Way& way : {Way{swing.gives_toward_from_in, asked.toward_from_in, route.from->name},
                         Way{swing.gives_toward_to_in, asked.toward_to_in, route.to->name}}) {
    if (way.gives_in >= way.asked_in) continue;
    words += (words.empty() ? "" : "; ") + context.phrasing.length(way.gives_in) + " toward " +
             way.node + ", asked " + context.phrasing.length(way.asked_in);
    if (judgement.value && *judgement.margin() <= way.gives_in - way.asked_in) continue;
    judgement.value = way.gives_in;
    judgement.limit = way.asked_in;
  }
  return words;
}

/// A cable's end on an arm that cannot turn as far as the cable is said to travel.
void judge_arms(const RuleContext& context, const PreparedRoute& route,
                std::vector<Judgement>& judgements) {
  for (const RouteEnd end : {RouteEnd::from, RouteEnd::to}) {
    const auto swing = arm_swing(route, end);
    if (!swing || swing->reaches) continue;
    const bool at_start = end == RouteEnd::from;
    const Node& node = at_start ? *route.from : *route.to;
    Judgement judgement = judgement_at(bend_fit_rule(), route, at_start ? 0 : route.length_in());
    judgement.location = at_start ? route.route->from_where : route.route->to_where;
    judgement.with = node.name;
    judgement.verdict = overlap.broken;
    judgement.source = "an arm moves its cable by twice its length at the most (calculated)";
    judgement.message = "the arm at " + node.name + " cannot move the cable through its travel";
    const std::string short_by = shortfall_words(context, route, *swing, judgement);
    if (!short_by.empty()) judgement.message += ": it gives " + short_by;
    judgement.mend = "state the travel that the arm gives, or its true pivot and axis";
    judgements.push_back(judgement);
  }
}

void judge_route(const RuleContext& context, const PreparedRoute& route,
                 std::vector<Judgement>& judgements) {
  const std::vector<Bend>& bends = route.centreline.bends();
  const bool cable = route.line->kind == LineKind::cable;
  for (std::size_t i = 0; i < route.wrap_faults.size(); ++i)
    if (route.wrap_faults[i])
      judgements.push_back(judge_wrap_fault(route, i, *route.wrap_faults[i]));
  judge_arms(context, route, judgements);
  bool any_arc = false;
  for (std::size_t i = 0; i < bends.size(); ++i) {
    any_arc = any_arc || bends[i].drawn_radius_in > 0;
    if (bends[i].drawn_radius_in > 0 || !bends[i].fits)
      judgements.push_back(judge_bend(context, route, i));
    const auto extra = cable ? judge_cable_corner(context, route, bends[i])
                             : judge_support_on_bend(context, route, bends[i]);
    if (extra) judgements.push_back(*extra);
  }
  if (any_arc)
    judgements.push_back(judge_straight(
        context, route, route.centreline.straight_after_in(), route.length_in(),
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
          "An arc of radius R that turns by θ takes up R·tan(θ/2) of each leg. Where two arcs "
          "share "
          "a leg, or an arc shares it with a fitting, their sum must fit, and the straight that is "
          "left must be long enough for the fitting and the bender. A support drawn on a corner is "
          "not on the line as bent. A cable that turns where nothing guides it is an error of the "
          "drawing: cables run straight between guides; a sleeve over "
          "the whole turn guides it, and `sleeve-cover` judges that. An `arm` must be able to give "
          "its cable the travel stated; one that cannot is taken as fixed elsewhere, and how far "
          "its cable swings is unknown. A pulley given by its centre must be one "
          "that the taut cable can go round as its axis says, for less than half a turn.",
      .mend =
          "Move corners apart, bend to a smaller radius that the line still stands, or move the "
          "support to a straight.",
      .limits = limits,
      .catalogue_limits = "",
      .judge = judge_bend_fit};
  return rule;
}

}  // namespace linewright
