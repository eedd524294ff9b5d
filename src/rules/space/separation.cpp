#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "lines/line_pairs.hpp"
#include "lines/motion/reach.hpp"
#include "lines/near/line_neighbours.hpp"
#include "lines/near/nearest_lines.hpp"
#include "rules/rule.hpp"
#include "rules/side_by_side.hpp"
#include "rules/space/measured_gap.hpp"
#include "rules/space/pair_tolerance.hpp"
#include "rules/space/run_out.hpp"
#include "rules/space/separation_fittings.hpp"
#include "rules/space/separation_zones.hpp"
#include "rules/space/under_vent.hpp"
#include "rules/space/unknown_girth.hpp"
#include "rules/space/unknown_hang.hpp"
#include "rules/space/unknown_sweep.hpp"

namespace linewright {

using namespace separation_rows;

namespace {

constexpr auto separation_limits = limit_table(
    {overlap, parting, metal_tube, soft_tube, tube_to_cable_at_support, tube_to_cable,
     wire_to_cable, wire_to_sleeved_cable, vent_least, wire_to_tube, cable_to_cable, wire_to_rod,
     line_to_rod, line_to_casing, wire_to_run_out, line_to_run_out, vent_wanted, over_vent});

bool is(const PreparedRoute& route, LineKind kind) {
  return route.line->kind == kind;
}

/// The nearest of all stretches of two lines. Cables hang off their drawn place.
std::optional<Approach> nearest_of(const std::vector<Stretch>& firsts,
                                   const std::vector<Stretch>& seconds, double horizon_in,
                                   const CountsPair& counts) {
  const auto moves = [](const std::vector<Stretch>& line) {
    return works_control(line.front().route->line->kind) ||
           is(*line.front().route, LineKind::conduit);
  };
  const bool hangs = moves(firsts) || moves(seconds);
  std::optional<Approach> nearest;
  for (const Stretch& first : firsts)
    for (const Stretch& second : seconds) {
      const auto approach = nearest_lines(first, second, hangs ? Reach::likely : Reach::none,
                                          nearest ? nearest->margin_in : horizon_in, counts);
      if (approach) nearest = approach;
    }
  return nearest;
}

std::optional<Judgement> judge_zone(const RuleContext& context, const std::vector<Stretch>& firsts,
                                    const std::vector<Stretch>& seconds, const SeparationZone& zone,
                                    const TolerancePart& part) {
  const PreparedRoute& first = *firsts.front().route;
  const PreparedRoute& second = *seconds.front().route;
  const double tolerance = part.tolerance_in;
  const auto counts = [&](double a, double b) {
    return !at_shared_node(first, a, second, b) && zone.counts(a, b) && part.counts(a, b) &&
           !context.is_passed_over(first, a) && !context.is_passed_over(second, b) &&
           !context.motion.ties.together(first, a, second, b);
  };
  const auto approach =
      nearest_of(firsts, seconds, zone.row->value + tolerance + beyond_limit_in, counts);
  if (!approach) return std::nullopt;
  const Phrasing& phrasing = context.phrasing;
  const std::string& other = second.route->name;
  const double free_in = approach->margin_in - tolerance;
  Judgement judgement = context.at(first, approach->distance_in);
  judgement.with = other;
  judgement.with_is_route = true;
  if (holds(judgement, free_in, {overlap, *zone.least, *zone.row})) {
    judgement.message = "far enough from " + other;
    return judgement;
  }
  judgement.message = judgement.limit == overlap.value
                          ? "can touch " + other
                          : "only " + phrasing.length(free_in) + " from " + other;
  const double sag = approach->gap_in - approach->margin_in;
  const bool rods = is(first, LineKind::rod) || is(second, LineKind::rod);
  const bool runs_out = zone.row == &wire_to_run_out || zone.row == &line_to_run_out;
  if (sag > 0 && !rods && !runs_out)
    judgement.message += ", less " + phrasing.length(sag) + " that cables can hang off";
  if (rods) judgement.message += ", somewhere on the rod's travel";
  if (runs_out) judgement.message += ", where a wire comes out of its casing";
  judgement.mend =
      "move the lines " + phrasing.length_up(Limit(*zone.row).lacking(free_in)) + " apart";
  if (zone.row == &wire_to_cable) judgement.mend += ", or sleeve the cable there";
  return judgement;
}

/// Lines that end at one node part there. As drawn they must lie beside each other from where the
/// fitting ends; that they are nearer there than other lines may be is in the nature of a fitting,
/// and where the node is off, it is off for both.
std::optional<Judgement> judge_parting(const RuleContext& context, const Stretch& first_whole,
                                       const Stretch& second_whole) {
  const PreparedRoute& first = *first_whole.route;
  const PreparedRoute& second = *second_whole.route;
  const auto counts = [&](double a, double b) {
    return sharing_at(first, a, second, b) == Sharing::parting &&
           !context.is_passed_over(first, a) && !context.is_passed_over(second, b);
  };
  const auto approach = nearest_lines(first_whole, second_whole, Reach::none, 0, counts);
  if (!approach) return std::nullopt;
  Judgement judgement = context.at(first, approach->distance_in);
  judgement.with = second.route->name;
  judgement.with_is_route = true;
  if (holds(judgement, approach->gap_in, {parting})) return std::nullopt;
  const Phrasing& phrasing = context.phrasing;
  judgement.message = "lies in " + second.route->name + ", past what the fitting explains";
  judgement.mend = "lead the lines " +
                   phrasing.length_up(Limit(parting).lacking(approach->gap_in)) +
                   " farther apart there, or give one of them another port";
  return judgement;
}

/// Places nearer along a line than a tight turn takes are neighbours, not meetings. What is thick
/// about it, a turnbuckle or a sleeve, takes a wider turn: along a straight line its surface
/// reaches as far.
double neighbours_in(const PreparedRoute& route, double a, double b) {
  const double thick_in = route.girth_radius_in(a) + route.girth_radius_in(b);
  return 1 + 3 * std::max(route.line->largest_diameter_in(), thick_in);
}

/// A line that comes back to where it has been must not run through itself.
std::optional<Judgement> judge_self(const RuleContext& context, const Stretch& whole,
                                    const TolerancePart& part) {
  const PreparedRoute& route = *whole.route;
  const double tolerance = part.tolerance_in;
  const auto counts = [&](double a, double b) {
    return b - a > neighbours_in(route, a, b) + 2 * tolerance && part.counts(a, b) &&
           !context.is_passed_over(route, a) && !context.is_passed_over(route, b);
  };
  const auto approach = nearest_lines(whole, whole, Reach::none, tolerance, counts);
  if (!approach) return std::nullopt;
  Judgement judgement = context.at(route, approach->distance_in);
  judgement.with = route.route->name;
  judgement.with_is_route = true;
  if (holds(judgement, approach->margin_in - tolerance, {overlap})) {
    judgement.message = "clear of itself";
    return judgement;
  }
  judgement.message = "the line can touch itself";
  judgement.mend = "lead the two parts " +
                   context.phrasing.length_up(Limit(overlap).lacking(*judgement.value)) +
                   " farther apart";
  return judgement;
}

/// What comes out of a casing must not meet the casing itself, nor what comes out of its other end.
std::optional<Judgement> judge_own_run_outs(const RuleContext& context, const Stretch& whole) {
  const PreparedRoute& route = *whole.route;
  const double tolerance = 2 * context.prepared.project->build_tolerance_in;
  const double apart = 1 + 3 * route.line->largest_diameter_in() + tolerance;
  const auto counts = [&](double a, double b) {
    return std::abs(b - a) > apart && !context.is_passed_over(route, a) &&
           !context.is_passed_over(route, b);
  };
  std::optional<Approach> nearest;
  const auto meet = [&](const Stretch& wire, const Stretch& other) {
    const auto approach =
        nearest_lines(wire, other, Reach::likely, nearest ? nearest->margin_in : tolerance, counts);
    if (approach) nearest = approach;
  };
  const std::vector<Stretch>& stretches = context.motion.hanging[context.index_of(route)];
  for (const Stretch& wire : stretches) {
    if (!is_run_out(wire)) continue;
    meet(wire, whole);
    for (const Stretch& other : stretches)
      if (is_run_out(other) && other.start_in > wire.start_in) meet(wire, other);
  }
  if (!nearest) return std::nullopt;
  Judgement judgement = context.at(route, nearest->distance_in);
  judgement.with = route.route->name;
  judgement.with_is_route = true;
  if (holds(judgement, nearest->margin_in - tolerance, {overlap})) return std::nullopt;
  judgement.message = "what comes out of the casing can touch the control itself";
  judgement.mend = "turn the end of the casing so that the wire goes " +
                   context.phrasing.length_up(Limit(overlap).lacking(*judgement.value)) +
                   " farther off";
  return judgement;
}

bool is_known(const RuleContext& context, const PreparedRoute& route) {
  return !unknown_sweep(context, route, line_to_rod);
}

void take_graver(std::optional<Judgement> judgement, std::optional<Judgement>& worst) {
  if (judgement && (!worst || graver(*judgement, *worst))) worst = std::move(judgement);
}

/// No two lines that stay farther apart are spoken of.
double farthest_judged_in(const PreparedProject& prepared) {
  double most_in = 0;
  for (const LimitRow& row : separation_limits) most_in = std::max(most_in, row.value);
  return most_in + most_pair_tolerance_in(prepared) + beyond_limit_in;
}

/// Lines by where they hang and where they are drawn.
LineNeighbours neighbours_of_all(const LineMotion& motion) {
  std::vector<std::vector<Bounds>> bounds;
  for (std::size_t i = 0; i < motion.drawn.size(); ++i) {
    bounds.push_back(bounds_with_reach(motion.hanging[i], Reach::likely));
    bounds.back().push_back(bounds_with_reach(motion.drawn[i], Reach::none));
  }
  return LineNeighbours(bounds);
}

/// Two lines, by their index.
void judge_two(const RuleContext& context, std::size_t i, std::size_t j,
               std::vector<Judgement>& judgements) {
  const PreparedRoute& first = context.prepared.routes[i];
  const PreparedRoute& second = context.prepared.routes[j];
  if (is(first, LineKind::wire) && is(second, LineKind::wire)) return;
  const std::vector<std::vector<Stretch>>& hanging = context.motion.hanging;
  const std::vector<Stretch>& drawn = context.motion.drawn;
  std::optional<Judgement> worst;
  for (const SeparationZone& zone : separation_zones(context, first, second)) {
    for (const TolerancePart& part : tolerance_parts(context.prepared, first, second))
      take_graver(judge_zone(context, hanging[i], hanging[j], zone, part), worst);
  }
  take_graver(judge_parting(context, drawn[i], drawn[j]), worst);
  const bool sweep_known = is_known(context, first) && is_known(context, second);
  if (worst && (sweep_known || worst->verdict != Verdict::pass)) judgements.push_back(*worst);
  for (const auto& [wire, vent] : {std::pair(i, j), std::pair(j, i)})
    if (const auto under = judge_under_vent(context, drawn[wire], drawn[vent], vent_wanted.value))
      judgements.push_back(*under);
}

/// What a line has to do with itself, and what is not known of it.
void judge_one(const RuleContext& context, const PreparedRoute& route,
               std::vector<Judgement>& judgements) {
  const Stretch& drawn = context.motion.drawn[context.index_of(route)];
  const bool alone = context.prepared.routes.size() == 1;
  if (!alone)
    if (const auto unknown = judge_unknown_hang(context, route, cable_to_cable))
      judgements.push_back(*unknown);
  const auto swept =
      unknown_sweep(context, route, is(route, LineKind::rod) ? line_to_rod : line_to_run_out);
  if (swept && !alone) judgements.push_back(*swept);
  std::optional<Judgement> self;
  for (const TolerancePart& part : tolerance_parts(context.prepared, route, route))
    take_graver(judge_self(context, drawn, part), self);
  take_graver(judge_own_run_outs(context, drawn), self);
  if (self) judgements.push_back(*self);
}

std::vector<Judgement> judge_as_stated(const RuleContext& context) {
  const auto& routes = context.prepared.routes;
  const LineNeighbours neighbours = neighbours_of_all(context.motion);
  const double horizon_in = farthest_judged_in(context.prepared);
  std::vector<Judgement> judgements = side_by_side(routes.size(), [&](std::size_t i) {
    std::vector<Judgement> of_route;
    for (const std::size_t j : neighbours.after(i, horizon_in))
      if (context.asks_for(routes[i]) || context.asks_for(routes[j]))
        judge_two(context, i, j, of_route);
    if (context.asks_for(routes[i])) judge_one(context, routes[i], of_route);
    return of_route;
  });
  for (const PreparedRoute& route : routes)
    if (context.asks_for(route))
      for (Judgement& judgement : judge_fittings_beside(context, route))
        judgements.push_back(std::move(judgement));
  return judgements;
}

std::vector<Limit> limits_of_gap(const RuleContext& context, const PreparedRoute& route,
                                 const MeasuredGap& gap) {
  if (!gap.line) return {};
  const double there = gap.drawn ? gap.drawn->other_distance_in : 0;
  if (gap.drawn && (at_shared_node(route, gap.distance_in, *gap.line, there) ||
                    context.motion.ties.together(route, gap.distance_in, *gap.line, there)))
    return {};
  for (const SeparationZone& zone : separation_zones(context, route, *gap.line))
    if (zone.counts(gap.distance_in, there)) return {overlap, *zone.least, *zone.row};
  return {};
}

std::vector<Judgement> judge_separation(const RuleContext& context) {
  std::vector<Judgement> judgements = with_unknown_girths(context, overlap, judge_as_stated);
  const auto of_gap = [&](const PreparedRoute& route, const MeasuredGap& gap) {
    return limits_of_gap(context, route, gap);
  };
  for (Judgement& measured : judge_measured_gaps(context, of_gap))
    judgements.push_back(std::move(measured));
  return judgements;
}

}  // namespace

const Rule& separation_rule() {
  static const Rule rule{
      .name = "separation",
      .purpose = "lines keep their distance from each other, by kind",
      .explanation =
          R"(The least free distance between the surfaces of two lines as drawn, less twice the build
tolerance, since either may lie off; of a line that is as built (see as-built) the measuring
tolerance counts in place of its own, and a gap that was measured is judged as well. Lines that end at one node part there: within 2 in of it
these distances do not count, nor those of two soft lines, plastic tubes or hoses, up to each
one's first support within 4 in of it; but past what the fitting explains, 1/4 in and twice each
line's diameter, no two may lie in one place as drawn, at whatever angle they leave. Two wire bundles
are not judged: they may be tied together. A bundle within 6 in of a vent line passes over it, not
under. The body of a
fitting whose size is known counts as a piece of the line that ends there. Lines that `bundles` tie to each other are left out where they lie within 1/2 in, and as
they part within 2 in past the last tie: `bundle` judges them. A line that crosses itself fails.
Cables count with their sag, and with the sideways swing of an end whose node states its `arm`;
without one leave room for it. Where their sag is not known, and where a sleeve that states no
`outside` would break a limit with a wall of 1/8 in, the answer is unknown. Pushrods count at every
place of their travel; where that is not known, so is what they pass. A casing stands still; what
comes out of its ends counts as in clearance, and must not meet the casing itself, nor what comes
out of the other end. How far lines can move toward each other is judged by chafe.)",
      .mend = "Move the lines apart; put a cable that must pass near wires in a sleeve.",
      .limits = separation_limits,
      .catalogue_limits = "",
      .judge = judge_separation,
      .leaves_out_unasked = true};
  return rule;
}

}  // namespace linewright
