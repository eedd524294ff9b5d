#include <algorithm>
#include <optional>
#include <utility>

#include "lines/line_pairs.hpp"
#include "lines/motion/reach.hpp"
#include "lines/motion/sleeve_hold.hpp"
#include "lines/near/nearest_lines.hpp"
#include "rules/rule.hpp"
#include "rules/space/under_vent.hpp"
#include "rules/space/unknown_girth.hpp"
#include "rules/space/unknown_hang.hpp"
#include "rules/space/unknown_sweep.hpp"

namespace linewright {

namespace {

constexpr std::string_view borrowed_from_tube = "borrowed from the figure for metal tube";

constexpr LimitRow overlap{.name = "overlap",
                           .subject = "any two lines",
                           .value = 0,
                           .source = "geometry: no two things in one place",
                           .mark = Mark::calculated};
constexpr LimitRow parting{
    .name = "parting",
    .subject = "two lines from one node, farther from it than 1/4 in and twice the diameter",
    .value = 0,
    .source = "geometry: no two things in one place; the fitting explains no more",
    .mark = Mark::calculated};
constexpr LimitRow metal_tube{.name = "metal-tube",
                              .subject = "metal tube to another tube or hose",
                              .value = 0.25,
                              .source = "SAE ARP994 / MIL-H-5440: adjacent lines",
                              .mark = Mark::from_memory};
constexpr LimitRow soft_tube{.name = "soft-tube",
                             .subject = "plastic tube or hose to the like",
                             .value = 0.25,
                             .source = borrowed_from_tube,
                             .mark = Mark::common_practice,
                             .broken = Verdict::warn};
constexpr LimitRow tube_to_cable_at_support{
    .name = "tube-to-cable-at-support",
    .subject = "instrument line to control cable, within 1 in of the line's support",
    .value = 0.5,
    .source = "through full travel",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};
constexpr LimitRow tube_to_cable{.name = "tube-to-cable",
                                 .subject = "instrument line to control cable, elsewhere",
                                 .value = 1.0,
                                 .source = "where the line is unsupported",
                                 .mark = Mark::common_practice,
                                 .broken = Verdict::warn};
constexpr LimitRow wire_to_cable{.name = "wire-to-cable",
                                 .subject = "wire bundle to control cable without a guard",
                                 .value = 3.0,
                                 .source = "FAA-H-8083-31, wiring chapter: else a mechanical guard",
                                 .mark = Mark::from_memory};
constexpr LimitRow wire_to_sleeved_cable{.name = "wire-to-sleeved-cable",
                                         .subject = "wire bundle to control cable in a sleeve",
                                         .value = 0.5,
                                         .source = "AC 43.13-1B para 11-125",
                                         .mark = Mark::from_memory};
constexpr LimitRow vent_least{
    .name = "wire-to-vent-least",
    .subject = "wire bundle to vent line (flammable vapour), in any case",
    .value = 2.0,
    .source =
        "AC 43.13-1B CHG 1 para 11-96 w: 2 in, closely clamped and tied, so that a broken wire "
        "with a tie or clamp missing does not touch",
    .mark = Mark::verified};
constexpr LimitRow wire_to_tube{.name = "wire-to-tube",
                                .subject = "wire bundle to instrument line",
                                .value = 0.25,
                                .source = borrowed_from_tube,
                                .mark = Mark::common_practice,
                                .broken = Verdict::warn};
constexpr LimitRow cable_to_cable{.name = "cable-to-cable",
                                  .subject = "control cable to control cable",
                                  .value = 0.5,
                                  .source = "where either can move",
                                  .mark = Mark::common_practice,
                                  .broken = Verdict::warn};
constexpr LimitRow wire_to_rod{.name = "wire-to-rod",
                               .subject = "wire bundle to pushrod",
                               .value = 0.5,
                               .source = "AC 43.13-1B para 11-125",
                               .mark = Mark::from_memory};
constexpr LimitRow line_to_rod{.name = "line-to-rod",
                               .subject = "any other line to pushrod",
                               .value = 0.5,
                               .source = "where either can move",
                               .mark = Mark::common_practice,
                               .broken = Verdict::warn};
constexpr LimitRow line_to_casing{.name = "line-to-casing",
                                  .subject = "any line but a moving control to a casing",
                                  .value = 0.25,
                                  .source = borrowed_from_tube,
                                  .mark = Mark::common_practice,
                                  .broken = Verdict::warn};
constexpr LimitRow wire_to_run_out{.name = "wire-to-run-out",
                                   .subject = "wire bundle to what comes out of a casing",
                                   .value = 0.5,
                                   .source = "AC 43.13-1B para 11-125",
                                   .mark = Mark::from_memory};
constexpr LimitRow line_to_run_out{.name = "line-to-run-out",
                                   .subject = "any other line to what comes out of a casing",
                                   .value = 0.5,
                                   .source = "where either can move",
                                   .mark = Mark::common_practice,
                                   .broken = Verdict::warn};
constexpr LimitRow vent_wanted{.name = "wire-to-vent",
                               .subject = "wire bundle to vent line (flammable vapour)",
                               .value = 6.0,
                               .source = "AC 43.13-1B CHG 1 para 11-96",
                               .mark = Mark::verified,
                               .broken = Verdict::warn};

constexpr auto limits = limit_table(
    {overlap, parting, metal_tube, soft_tube, tube_to_cable_at_support, tube_to_cable,
     wire_to_cable, wire_to_sleeved_cable, vent_least, wire_to_tube, cable_to_cable, wire_to_rod,
     line_to_rod, line_to_casing, wire_to_run_out, line_to_run_out, vent_wanted, over_vent});

/// Added to the largest limit of a pair: lines farther apart are no neighbours and are not listed.
constexpr double beyond_limit_in = 1.0;

bool is(const PreparedRoute& route, LineKind kind) {
  return route.line->kind == kind;
}
bool is_tube(const PreparedRoute& route) {
  return !works_control(route.line->kind) && !is(route, LineKind::wire) &&
         !is(route, LineKind::conduit);
}

/// A limit and where along the two lines it holds; besides it that of overlap, and the least one
/// where there is one.
struct Zone {
  const LimitRow* row;
  CountsPair counts;
  const LimitRow* least = &overlap;
};

CountsPair everywhere() {
  return [](double, double) { return true; };
}

std::vector<Zone> tube_and_cable(const PreparedRoute& first, const PreparedRoute& second) {
  const bool tube_first = is_tube(first);
  const PreparedRoute& tube = tube_first ? first : second;
  const auto supported = [&tube, tube_first](double a, double b) {
    return tube.to_nearest_support_in(tube_first ? a : b) <= at_support_in;
  };
  return {{&tube_to_cable_at_support, supported},
          {&tube_to_cable, [supported](double a, double b) { return !supported(a, b); }}};
}

std::vector<Zone> wire_and_cable(const RuleContext& context, const PreparedRoute& first,
                                 const PreparedRoute& second) {
  const bool cable_first = is(first, LineKind::cable);
  const PreparedRoute& cable = cable_first ? first : second;
  const auto sleeved = [&sleeves = context.motion.sleeves[context.index_of(cable)], cable_first](
                           double a, double b) { return sleeves.guard(cable_first ? a : b); };
  return {{&wire_to_sleeved_cable, sleeved},
          {&wire_to_cable, [sleeved](double a, double b) { return !sleeved(a, b); }}};
}

/// What comes out of a casing lies at the very ends of its route.
std::vector<Zone> beside_casing(const PreparedRoute& first, const PreparedRoute& second,
                                bool any_wire, bool any_cable) {
  const auto at_end = [](const PreparedRoute& route, double along) {
    return is(route, LineKind::conduit) && (along <= 0 || along >= route.length_in());
  };
  const auto runs_out = [&first, &second, at_end](double a, double b) {
    return at_end(first, a) || at_end(second, b);
  };
  return {{any_cable ? &cable_to_cable : &line_to_casing,
           [runs_out](double a, double b) { return !runs_out(a, b); }},
          {any_wire ? &wire_to_run_out : &line_to_run_out, runs_out}};
}

std::vector<Zone> zones(const RuleContext& context, const PreparedRoute& first,
                        const PreparedRoute& second) {
  const bool any_cable = is(first, LineKind::cable) || is(second, LineKind::cable);
  const bool any_wire = is(first, LineKind::wire) || is(second, LineKind::wire);
  if (is(first, LineKind::rod) || is(second, LineKind::rod))
    return {{any_wire ? &wire_to_rod : &line_to_rod, everywhere()}};
  if (is(first, LineKind::conduit) || is(second, LineKind::conduit))
    return beside_casing(first, second, any_wire, any_cable);
  if (any_cable && any_wire) return wire_and_cable(context, first, second);
  if (any_cable && (is_tube(first) || is_tube(second))) return tube_and_cable(first, second);
  if (any_cable) return {{&cable_to_cable, everywhere()}};
  if (any_wire && !is_tube(first) && !is_tube(second)) return {};
  if (any_wire) {
    if (is_vent(first) || is_vent(second)) return {{&vent_wanted, everywhere(), &vent_least}};
    return {{&wire_to_tube, everywhere()}};
  }
  const bool metal = is(first, LineKind::rigid_tube) || is(second, LineKind::rigid_tube);
  return {{metal ? &metal_tube : &soft_tube, everywhere()}};
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
                                    const std::vector<Stretch>& seconds, const Zone& zone) {
  const PreparedRoute& first = *firsts.front().route;
  const PreparedRoute& second = *seconds.front().route;
  // Each of the two lines may lie off by the tolerance.
  const double tolerance = 2 * context.prepared.project->build_tolerance_in;
  const auto counts = [&](double a, double b) {
    return !at_shared_node(first, a, second, b) && zone.counts(a, b) &&
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

/// A line that comes back to where it has been must not run through itself. Places nearer along
/// the line than a tight turn takes are neighbours, not meetings.
std::optional<Judgement> judge_self(const RuleContext& context, const Stretch& whole) {
  const PreparedRoute& route = *whole.route;
  const double tolerance = 2 * context.prepared.project->build_tolerance_in;
  const double apart = 1 + 3 * route.line->largest_diameter_in() + 2 * tolerance;
  const auto counts = [&](double a, double b) {
    return b - a > apart && !context.is_passed_over(route, a) && !context.is_passed_over(route, b);
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

bool is_known(const RuleContext& context, const PreparedRoute& route) {
  return !unknown_sweep(context, route, line_to_rod);
}

std::vector<Judgement> judge_as_stated(const RuleContext& context) {
  std::vector<Judgement> judgements;
  const auto& routes = context.prepared.routes;
  const std::vector<std::vector<Stretch>>& hanging = context.motion.hanging;
  std::vector<Stretch> wholes;
  for (const PreparedRoute& route : routes)
    wholes.push_back(make_stretch(route, 0, route.length_in()));
  for (std::size_t i = 0; i < routes.size(); ++i) {
    for (std::size_t j = i + 1; j < routes.size(); ++j) {
      if (is(routes[i], LineKind::wire) && is(routes[j], LineKind::wire)) continue;
      std::optional<Judgement> worst;
      for (const Zone& zone : zones(context, routes[i], routes[j])) {
        const auto judgement = judge_zone(context, hanging[i], hanging[j], zone);
        if (judgement && (!worst || graver(*judgement, *worst))) worst = judgement;
      }
      const auto parted = judge_parting(context, wholes[i], wholes[j]);
      if (parted && (!worst || graver(*parted, *worst))) worst = parted;
      const bool sweep_known = is_known(context, routes[i]) && is_known(context, routes[j]);
      if (worst && (sweep_known || worst->verdict != Verdict::pass)) judgements.push_back(*worst);
      for (const auto& [wire, vent] : {std::pair(i, j), std::pair(j, i)})
        if (const auto under =
                judge_under_vent(context, wholes[wire], wholes[vent], vent_wanted.value))
          judgements.push_back(*under);
    }
    if (routes.size() > 1)
      if (const auto unknown = judge_unknown_hang(context, routes[i], cable_to_cable))
        judgements.push_back(*unknown);
    const auto swept = unknown_sweep(context, routes[i],
                                     is(routes[i], LineKind::rod) ? line_to_rod : line_to_run_out);
    if (swept && routes.size() > 1) judgements.push_back(*swept);
    if (const auto self = judge_self(context, wholes[i])) judgements.push_back(*self);
  }
  return judgements;
}

std::vector<Judgement> judge_separation(const RuleContext& context) {
  return with_unknown_girths(context, overlap, judge_as_stated);
}

}  // namespace

const Rule& separation_rule() {
  static const Rule rule{
      .name = "separation",
      .purpose = "lines keep their distance from each other, by kind",
      .explanation =
          R"(The least free distance between the surfaces of two lines as drawn, less twice the build
tolerance, since either may lie off. Lines that end at one node part there: within 2 in of it
these distances do not count, nor those of two soft lines, plastic tubes or hoses, up to each
one's first support within 4 in of it; but past what the fitting explains, 1/4 in and twice each
line's diameter, no two may lie in one place as drawn, at whatever angle they leave. Two wire bundles
are not judged: they may be tied together. A bundle within 6 in of a vent line passes over it, not
under. Lines that `bundles` tie to each other are left out where they lie within 1/2 in, and as
they part within 2 in past the last tie: `bundle` judges them. A line that crosses itself fails.
Cables count with their sag, and with the sideways swing of an end whose node states its `arm`;
without one leave room for it. Where their sag is not known, and where a sleeve that states no
`outside` would break a limit with a wall of 1/8 in, the answer is unknown. Pushrods count at every
place of their travel; where that is not known, so is what they pass. A casing stands still; what
comes out of its ends counts as in clearance. How far lines can move toward
each other is judged by chafe.)",
      .mend = "Move the lines apart; put a cable that must pass near wires in a sleeve.",
      .limits = limits,
      .catalogue_limits = "",
      .judge = judge_separation};
  return rule;
}

}  // namespace linewright
