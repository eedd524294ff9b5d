#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "model/angle.hpp"
#include "rules/cable/free_fairlead.hpp"
#include "rules/rule.hpp"
#include "rules/words/swung_end.hpp"

namespace linewright {

namespace {

constexpr LimitRow most_turn{.name = "turn-in-fairlead",
                             .subject = "turn of a cable in a fairlead",
                             .value = 3,
                             .unit = Unit::degree,
                             .sense = LimitSense::at_most,
                             .source = "14 CFR 23.689(c); AC 43.13-1B para 7-149 n",
                             .mark = Mark::verified};

constexpr auto fairlead_angle_limits = limit_table({most_turn, free_as_drawn, free_as_it_moves});

/// What a drawing to a tenth of an inch turns a straight cable by, at legs of a few feet [common
/// practice, no source]. It is taken off where the cable is drawn straight but for that, so that an
/// arm which swings it by all that is allowed does not fail by what the drawing adds.
constexpr double drawn_misfit_deg = 0.1;

bool is_drawn_straight(const PreparedRoute& route, int point) {
  for (const Bend& bend : route.centreline.bends())
    if (bend.corner == point + 1) return bend.slight;
  return true;
}

double turn_deg(const LegDirections& legs) {
  return angle_between_rad(legs.before, legs.after) * degrees_per_radian;
}

/// How far the point must come toward the straight line between its neighbours: at height h over
/// feet p and q it turns by atan(h/p) + atan(h/q), so h² tan θ + h (p + q) = p q tan θ. Nothing
/// where it does not stand between them.
std::optional<double> move_in(Vec3 before, Vec3 here, Vec3 after) {
  const double chord = distance(before, after);
  if (chord <= 0) return std::nullopt;
  const Vec3 along = (after - before) / chord;
  const double p = dot(here - before, along);
  const double q = chord - p;
  if (p <= 0 || q <= 0) return std::nullopt;
  const double height = norm(here - before - along * p);
  const double t = std::tan(most_turn.value / degrees_per_radian);
  const double allowed = 2 * p * q * t / (chord + std::sqrt(chord * chord + 4 * p * q * t * t));
  return height - allowed;
}

Judgement judge_point(const RuleContext& context, const PreparedRoute& route, std::size_t index) {
  const RoutePoint& point = route.route->points[index];
  const auto& corners = route.centreline.corners();
  const Vec3 before = corners[index].at;
  const Vec3 after = corners[index + 2].at;
  Judgement judgement = context.at(route, route.point_distance_in[index]);
  judgement.location = point.where;
  if (!point.through.empty()) judgement.with = point.through;
  const int number = static_cast<int>(index);
  const auto legs = leg_directions(route, number);
  const auto widest = std::max_element(legs.begin(), legs.end(), [](const auto& a, const auto& b) {
    return turn_deg(a) < turn_deg(b) - limit_rounding;
  });
  const bool swung = widest != legs.begin();
  double turn = turn_deg(*widest);
  if (swung && is_drawn_straight(route, number))
    turn -= std::min(turn_deg(legs.front()), drawn_misfit_deg);
  const bool held = holds(judgement, turn, {most_turn});
  const std::string where = point.through.empty() ? "the fairlead" : "hole " + point.through;
  std::string turns = context.phrasing.angle(*judgement.value) + " in " + where;
  if (swung) turns += " at full travel, as " + swinging_end_name(route, number) + " swings";
  const std::string fixed = fixed_end_words(route, number);
  if (held) {
    judgement.message = "the cable turns " + turns + fixed;
    return judgement;
  }
  judgement.message =
      fmt::format("the cable turns {}, over the {:g} deg that a fairlead may turn it{}", turns,
                  most_turn.value, fixed);
  judgement.mend = "put a pulley there";
  if (swung && turn_deg(legs.front()) <= most_turn.value + limit_rounding) {
    judgement.mend = "set the fairlead farther from " + swinging_end_name(route, number) +
                     ", lengthen the arm, or put a pulley there";
    return judgement;
  }
  // By how much is not told where an end swings: that depends on where the fairlead then stands.
  if (swung)
    judgement.mend =
        "move the fairlead to the straight line between its neighbours, and farther "
        "from " +
        swinging_end_name(route, number) + " if that is not enough, or put a pulley there";
  else if (const auto move = move_in(before, point.at, after))
    judgement.mend = "move the fairlead " + context.phrasing.length_up(*move) +
                     " toward the straight line between its neighbours, or put a pulley there";
  return judgement;
}

/// Where a clamp holds a sleeve about a cable, and an end that swings is next to it: from the end
/// to the clamp, and to the sleeve's mouth.
struct HeldMouth {
  double to_clamp_in = 0;
  double to_mouth_in = 0;
};

std::optional<HeldMouth> held_mouth(const PreparedRoute& route, std::size_t index, bool at_from) {
  const double at = route.point_distance_in[index];
  const Sleeve* sleeve = route.sleeve_at(at);
  if (!sleeve || !route.bears_clamp(at)) return std::nullopt;
  const double length = route.length_in();
  const HeldMouth mouth =
      at_from ? HeldMouth{at, sleeve->from_in} : HeldMouth{length - at, length - sleeve->to_in};
  // A sleeve that goes all the way to the end is what that runs into.
  return mouth.to_mouth_in > 0 ? std::optional(mouth) : std::nullopt;
}

/// How far the mouth of the sleeve turns the cable as its end swings: to the side by as much as at
/// the clamp, over a shorter way. A sleeve may be bent; it is not judged as drawn.
double swung_in_mouth_deg(const PreparedRoute& route, std::size_t index) {
  double most_deg = 0;
  const auto legs = leg_directions(route, static_cast<int>(index));
  for (const auto& leg : legs)
    for (const bool at_from : {true, false}) {
      const auto mouth = held_mouth(route, index, at_from);
      const double swung_rad = at_from ? angle_between_rad(legs.front().before, leg.before)
                                       : angle_between_rad(legs.front().after, leg.after);
      if (!mouth || swung_rad <= 0) continue;
      const double aside_in = std::tan(std::min(swung_rad, 1.5)) * mouth->to_clamp_in;
      most_deg = std::max(most_deg, std::atan(aside_in / mouth->to_mouth_in) * degrees_per_radian);
    }
  return most_deg;
}

/// Nothing where no end swings beside a clamp on a sleeve, or its mouth may turn the cable so far.
std::optional<Judgement> judge_mouth(const RuleContext& context, const PreparedRoute& route,
                                     std::size_t index) {
  const RoutePoint& point = route.route->points[index];
  if (point.hold != HoldKind::clamp || route.stays()) return std::nullopt;
  Judgement judgement = context.at(route, route.point_distance_in[index]);
  judgement.location = point.where;
  const double turn = swung_in_mouth_deg(route, index);
  if (holds(judgement, turn, {most_turn})) return std::nullopt;
  const std::string end = swinging_end_name(route, static_cast<int>(index));
  judgement.message = "the mouth of the sleeve that the clamp holds turns the cable " +
                      context.phrasing.angle(turn) + " at full travel, as " + end + " swings";
  judgement.mend =
      "end the sleeve, and set the clamp, farther from " + end + ", or lengthen the arm";
  return judgement;
}

std::vector<Judgement> judge_fairlead_angle(const RuleContext& context) {
  std::vector<Judgement> judgements = judge_free_fairleads(context);
  for (const PreparedRoute& route : context.prepared.routes) {
    if (route.line->kind != LineKind::cable) continue;
    for (std::size_t i = 0; i < route.route->points.size(); ++i)
      if (route.route->points[i].is_bored_guide())
        judgements.push_back(judge_point(context, route, i));
      else if (auto turned = judge_mouth(context, route, i))
        judgements.push_back(*std::move(turned));
  }
  return judgements;
}

}  // namespace

const Rule& fairlead_angle_rule() {
  static const Rule rule{
      .name = "fairlead-angle",
      .purpose = "a cable turns no more than 3 degrees in a fairlead, or passes it free",
      .explanation =
          R"(At every fairlead, and every grommet or bushing that a cable is led through, the angle
between the legs before and after it must not be over the limit: a fairlead guides in a
straight line, and a cable pulled round it wears both. The angle is that of the drawing with
the controls neutral; at the guide next to a horn or pedal that states its `arm`, it is also
that at both ends of the travel, with the cable's end carried round the arm's axis. An end
without an `arm` is taken as fixed, which is said. The mouth of a sleeve that a clamp holds turns the
cable as a fairlead does where such an end swings beside it, and is judged for that alone. A turn where nothing guides the cable is an
error of the drawing: see `bend-fit`. A fairlead with `passes: free` is a ring that the cable
is to go through without touching: its `at` is the middle of its bore and no corner of the
cable's path. What the cable's radius, its distance from that middle and the build tolerance
leave of the bore is held against how far the cable is likely to move there (play of its
guides, sag under the load factor at its least tension, swing of its end), to all sides. A
point that the cable passes outside its bore, or that is not at the frame of its hole, fails:
no bore mends it.)",
      .mend = "Move the fairlead nearer to the straight line, or use a pulley.",
      .limits = fairlead_angle_limits,
      .catalogue_limits = "",
      .judge = judge_fairlead_angle};
  return rule;
}

}  // namespace linewright
