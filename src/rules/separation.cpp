#include "rules/separation.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "geometry/nearest_approach.hpp"
#include "rules/line_pairs.hpp"
#include "rules/reach.hpp"
#include "rules/sleeve_hold.hpp"

namespace linewright {

namespace {

constexpr std::array<LimitRow, 11> limits{{
    {"any two lines", 0, "in", "geometry: no two things in one place", Mark::calculated,
     Verdict::fail},
    {"metal tube to another tube or hose", 0.25, "in", "SAE ARP994 / MIL-H-5440: adjacent lines",
     Mark::from_memory, Verdict::fail},
    {"plastic tube or hose to the like", 0.25, "in", "borrowed from the figure for metal tube",
     Mark::common_practice, Verdict::warn},
    {"instrument line to control cable, within 1 in of the line's support", 0.5, "in",
     "through full travel", Mark::common_practice, Verdict::warn},
    {"instrument line to control cable, elsewhere", 1.0, "in", "where the line is unsupported",
     Mark::common_practice, Verdict::warn},
    {"wire bundle to control cable without a guard", 3.0, "in",
     "FAA-H-8083-31, wiring chapter: else a mechanical guard", Mark::from_memory, Verdict::fail},
    {"wire bundle to control cable in a sleeve", 0.5, "in", "AC 43.13-1B para 11-125",
     Mark::from_memory, Verdict::fail},
    {"wire bundle to vent line (flammable vapour), least", 2.0, "in",
     "AC 43.13-1B CHG 1 para 11-96: 2 in with close clamping", Mark::verified, Verdict::fail},
    {"wire bundle to instrument line", 0.25, "in", "borrowed from the figure for metal tube",
     Mark::common_practice, Verdict::warn},
    {"control cable to control cable", 0.5, "in", "where either can move", Mark::common_practice,
     Verdict::warn},
    {"wire bundle to vent line (flammable vapour)", 6.0, "in", "AC 43.13-1B CHG 1 para 11-96",
     Mark::verified, Verdict::warn},
}};
constexpr const LimitRow& vent_least = limits[7];
constexpr const LimitRow& vent_wanted = limits[10];
constexpr const LimitRow& overlap = limits[0];

/// Added to the largest limit of a pair: lines farther apart are no neighbours and are not listed.
constexpr double beyond_limit_in = 1.0;

bool is(const PreparedRoute& route, LineKind kind) {
  return route.line->kind == kind;
}
bool is_tube(const PreparedRoute& route) {
  return !is(route, LineKind::cable) && !is(route, LineKind::wire);
}

/// A limit and where along the two lines it holds.
struct Zone {
  const LimitRow* row;
  CountsPair counts;
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
  return {{&limits[3], supported},
          {&limits[4], [supported](double a, double b) { return !supported(a, b); }}};
}

std::vector<Zone> wire_and_cable(const PreparedRoute& first, const PreparedRoute& second) {
  const bool cable_first = is(first, LineKind::cable);
  const PreparedRoute& cable = cable_first ? first : second;
  const auto sleeved = [sleeves = SleeveGuards(cable), cable_first](double a, double b) {
    return sleeves.guard(cable_first ? a : b);
  };
  return {{&limits[6], sleeved},
          {&limits[5], [sleeved](double a, double b) { return !sleeved(a, b); }}};
}

std::vector<Zone> zones(const PreparedRoute& first, const PreparedRoute& second) {
  const bool any_cable = is(first, LineKind::cable) || is(second, LineKind::cable);
  const bool any_wire = is(first, LineKind::wire) || is(second, LineKind::wire);
  if (any_cable && any_wire) return wire_and_cable(first, second);
  if (any_cable && (is_tube(first) || is_tube(second))) return tube_and_cable(first, second);
  if (any_cable) return {{&limits[9], everywhere()}};
  if (any_wire && !is_tube(first) && !is_tube(second)) return {};
  if (any_wire) {
    const bool vent =
        first.route->system == SystemKind::vent || second.route->system == SystemKind::vent;
    return {{vent ? &vent_wanted : &limits[8], everywhere()}};
  }
  const bool metal = is(first, LineKind::rigid_tube) || is(second, LineKind::rigid_tube);
  return {{metal ? &limits[1] : &limits[2], everywhere()}};
}

/// The nearest of all stretches of two lines. Cables hang off their drawn place.
std::optional<Approach> nearest_of(const std::vector<Stretch>& firsts,
                                   const std::vector<Stretch>& seconds, double horizon_in,
                                   const CountsPair& counts) {
  const bool hangs =
      is(*firsts.front().route, LineKind::cable) || is(*seconds.front().route, LineKind::cable);
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
           !context.is_passed_over(separation_rule().name, first, a) &&
           !context.is_passed_over(separation_rule().name, second, b);
  };
  const auto approach =
      nearest_of(firsts, seconds, zone.row->value + tolerance + beyond_limit_in, counts);
  if (!approach) return std::nullopt;
  const bool too_near_vent =
      zone.row == &vent_wanted && approach->gap_in - tolerance < vent_least.value;
  const LimitRow& row = too_near_vent ? vent_least : *zone.row;
  const Phrasing& phrasing = context.phrasing;
  const std::string& other = second.route->name;
  Judgement judgement = judgement_at(separation_rule(), first, approach->distance_in);
  judgement.with = other;
  judgement.with_is_route = true;
  judgement.value = approach->margin_in - tolerance;
  judgement.limit = row.value;
  judgement.source = cite(row);
  if (*judgement.value >= row.value - limit_rounding_in) {
    judgement.verdict = Verdict::pass;
    judgement.message = "far enough from " + other;
    return judgement;
  }
  const bool touches = *judgement.value < 0;
  judgement.verdict = touches ? overlap.broken : row.broken;
  if (touches) judgement.source = cite(overlap);
  judgement.message = touches ? "can touch " + other
                              : "only " + phrasing.length(*judgement.value) + " from " + other;
  const double sag = approach->gap_in - approach->margin_in;
  if (sag > 0) judgement.message += ", less " + phrasing.length(sag) + " that cables can hang off";
  judgement.mend = "move the lines " + phrasing.length_up(row.value - *judgement.value) + " apart";
  if (zone.row == &limits[5]) judgement.mend += ", or sleeve the cable there";
  return judgement;
}

/// A line that comes back to where it has been must not run through itself. Places nearer along
/// the line than a tight turn takes are neighbours, not meetings.
std::optional<Judgement> judge_self(const RuleContext& context, const Stretch& whole) {
  const PreparedRoute& route = *whole.route;
  const double tolerance = 2 * context.prepared.project->build_tolerance_in;
  const double apart = 1 + 3 * route.line->largest_diameter_in() + 2 * tolerance;
  const auto counts = [&](double a, double b) {
    return b - a > apart && !context.is_passed_over(separation_rule().name, route, a) &&
           !context.is_passed_over(separation_rule().name, route, b);
  };
  const auto approach = nearest_lines(whole, whole, Reach::none, tolerance, counts);
  if (!approach) return std::nullopt;
  Judgement judgement = judgement_at(separation_rule(), route, approach->distance_in);
  judgement.with = route.route->name;
  judgement.with_is_route = true;
  judgement.value = approach->margin_in - tolerance;
  judgement.limit = overlap.value;
  judgement.source = cite(overlap);
  judgement.verdict = *judgement.value < 0 ? overlap.broken : Verdict::pass;
  judgement.message = *judgement.value < 0 ? "the line can touch itself" : "clear of itself";
  if (*judgement.value < 0)
    judgement.mend = "lead the two parts " +
                     context.phrasing.length_up(overlap.value - *judgement.value) +
                     " farther apart";
  return judgement;
}

std::vector<Judgement> judge_separation(const RuleContext& context) {
  std::vector<Judgement> judgements;
  const auto& routes = context.prepared.routes;
  const std::vector<FreeRun> runs = free_runs(context.prepared);
  std::vector<std::vector<Stretch>> hanging;
  for (const PreparedRoute& route : routes)
    hanging.push_back(hanging_stretches(context.prepared, route, runs));
  for (std::size_t i = 0; i < routes.size(); ++i) {
    for (std::size_t j = i + 1; j < routes.size(); ++j) {
      std::optional<Judgement> worst;
      for (const Zone& zone : zones(routes[i], routes[j])) {
        const auto judgement = judge_zone(context, hanging[i], hanging[j], zone);
        if (judgement && (!worst || graver(*judgement, *worst))) worst = judgement;
      }
      if (worst) judgements.push_back(*worst);
    }
    const Stretch whole = make_stretch(routes[i], 0, routes[i].length_in());
    if (const auto self = judge_self(context, whole)) judgements.push_back(*self);
  }
  return judgements;
}

}  // namespace

const Rule& separation_rule() {
  static const Rule rule{
      .name = "separation",
      .purpose = "lines keep their distance from each other, by kind",
      .explanation =
          "The least free distance between the surfaces of two lines as drawn, less twice the "
          "build "
          "tolerance, since either may lie off. Lines that meet at a node do not count within 2 in "
          "of it. Two wire bundles are not judged: they may be tied together. A "
          "line that crosses itself fails. Cables count with their sag, and with the sideways "
          "swing of an end whose node states its `arm`; without one leave room for it. How far "
          "lines can move toward each other is "
          "judged by chafe.",
      .mend = "Move the lines apart; put a cable that must pass near wires in a sleeve.",
      .limits = limits,
      .catalogue_limits = "",
      .judge = judge_separation};
  return rule;
}

}  // namespace linewright
