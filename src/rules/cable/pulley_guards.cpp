#include "rules/cable/pulley_guards.hpp"

#include <numbers>
#include <optional>
#include <utility>

#include "lines/arm_swing.hpp"
#include "model/angle.hpp"
#include "rules/rule.hpp"
#include "rules/words/swung_end.hpp"

namespace linewright {

namespace {

constexpr double angle_rounding_rad = 1e-9;
/// One pin is near both tangent points where the arc between them is no longer than this
/// [common practice, no source].
constexpr double one_pin_arc_in = 0.5;

const Bend* bend_at(const PreparedRoute& route, std::size_t index) {
  for (const Bend& bend : route.centreline.bends())
    if (bend.corner == static_cast<int>(index) + 1) return &bend;
  return nullptr;
}

/// How far the cable goes round the pulley: as drawn, or as an arm swings it, if that is farther.
struct Wrap {
  double angle_rad = 0;
  double arc_in = 0;  ///< between the tangent points
  bool swung = false;
};

double turn_rad(const LegDirections& legs) {
  return angle_between_rad(legs.before, legs.after);
}

Wrap widest_wrap(const PreparedRoute& route, std::size_t index) {
  const Bend* bend = bend_at(route, index);
  Wrap wrap;
  if (bend) wrap = {bend->angle_rad, bend->end_in - bend->start_in, false};
  const auto legs = leg_directions(route, static_cast<int>(index));
  for (std::size_t i = 1; i < legs.size(); ++i) {
    const double more_rad = turn_rad(legs[i]) - turn_rad(legs.front());
    const double angle_rad = (bend ? bend->angle_rad : 0) + more_rad;
    if (angle_rad <= wrap.angle_rad + angle_rounding_rad) continue;
    wrap = {angle_rad, angle_rad * route.route->points[index].diameter_in.value_or(0) / 2, true};
  }
  return wrap;
}

const LimitRow& number_row(const Wrap& wrap) {
  if (wrap.angle_rad > std::numbers::pi / 2 + angle_rounding_rad) return guards_past_quarter_turn;
  return wrap.arc_in > one_pin_arc_in + limit_rounding ? guards_at_tangents : guards_at_pulley;
}

Judgement guard_judgement(const RuleContext& context, const PreparedRoute& route,
                          std::size_t index) {
  const RoutePoint& point = route.route->points[index];
  Judgement judgement = context.at(route, route.point_distance_in[index]);
  judgement.location = point.where;
  if (!point.to.empty()) judgement.with = point.to;
  return judgement;
}

std::string pins(int count) {
  return std::to_string(count) + (count == 1 ? " guard" : " guards");
}

Judgement judge_number(const RuleContext& context, const PreparedRoute& route, std::size_t index) {
  const RoutePoint& point = route.route->points[index];
  const Wrap widest = widest_wrap(route, index);
  const LimitRow& row = number_row(widest);
  const int wanted = static_cast<int>(row.value);
  std::string wrap = context.phrasing.angle(widest.angle_rad * degrees_per_radian);
  if (widest.swung)
    wrap += " at full travel, as " + swinging_end_name(route, static_cast<int>(index)) + " swings";
  Judgement judgement = guard_judgement(context, route, index);
  if (!point.guards) {
    leave_unknown(judgement, row);
    judgement.limit = row.value;
    judgement.message =
        "whether guards keep the cable on the pulley when it is slack is not stated";
    judgement.mend = "state how many pins stand at its groove, and their gap: guards: " +
                     std::to_string(wanted) + ", guard_gap: 0.05 in";
    return judgement;
  }
  judgement.message =
      (*point.guards == 0 ? "no guard" : pins(*point.guards)) + " at a wrap of " + wrap;
  if (holds(judgement, *point.guards, {row})) return judgement;
  judgement.message += ": a slack cable can leave the groove";
  judgement.mend =
      "fit a guard near " + std::string(wanted == 1   ? "where the cable meets the pulley"
                                        : wanted == 2 ? "each tangent point"
                                                      : "each tangent point and one "
                                                        "between");
  return judgement;
}

/// Nothing where a guard stands outside of the cable, or too little is stated to tell. The groove's
/// diameter is to the middle of the cable, as it is drawn.
std::optional<Judgement> judge_pinch(const RuleContext& context, const PreparedRoute& route,
                                     std::size_t index) {
  const RoutePoint& point = route.route->points[index];
  if (!point.guard_gap_in || !point.outside_in || !point.diameter_in) return std::nullopt;
  const double to_guard_in = *point.outside_in / 2 + *point.guard_gap_in;
  const double free_in = to_guard_in - *point.diameter_in / 2 - route.line->largest_radius_in();
  Judgement judgement = guard_judgement(context, route, index);
  if (holds(judgement, free_in, {guard_clear})) return std::nullopt;
  judgement.message = "the guards stand " + context.phrasing.length(-free_in) +
                      " into the cable in the groove, by the pulley's outside and their gap";
  judgement.mend = "set the guards off by " + context.phrasing.length_up(-free_in) +
                   " or more, or measure `outside` and `guard_gap` again";
  return judgement;
}

Judgement judge_gap(const RuleContext& context, const PreparedRoute& route, std::size_t index) {
  const RoutePoint& point = route.route->points[index];
  const Limit most = guard_gap * route.line->outside_diameter_in;
  Judgement judgement = guard_judgement(context, route, index);
  if (!point.guard_gap_in) {
    leave_unknown(judgement, most);
    judgement.limit = most.value;
    judgement.message = "the gap between the pulley's flange and its guards is not stated";
    judgement.mend = "measure it and state it: guard_gap: 0.05 in";
    return judgement;
  }
  const std::string gap = context.phrasing.length(*point.guard_gap_in) +
                          " between flange and guard, for a cable of " +
                          context.phrasing.length(most.value);
  if (holds(judgement, *point.guard_gap_in, {most})) {
    judgement.message = gap;
    return judgement;
  }
  judgement.message = gap + ": a slack cable can slip out";
  judgement.mend = "set the guards to a gap of less than " + context.phrasing.length(most.value);
  return judgement;
}

}  // namespace

std::vector<Judgement> judge_guards(const RuleContext& context, const PreparedRoute& route,
                                    std::size_t index) {
  std::vector<Judgement> judgements{judge_number(context, route, index)};
  if (route.route->points[index].guards.value_or(0) > 0) {
    judgements.push_back(judge_gap(context, route, index));
    if (auto pinched = judge_pinch(context, route, index))
      judgements.push_back(*std::move(pinched));
  }
  return judgements;
}

}  // namespace linewright
