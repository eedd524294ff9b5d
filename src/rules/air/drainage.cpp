#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

#include "lines/trapped_water.hpp"
#include "rules/air/level_run.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

constexpr LimitRow closing{
    .name = "water-that-closes-bore",
    .subject = "trapped water that closes the bore, or that has no way out at all",
    .value = 0,
    .unit = Unit::cubic_inch,
    .sense = LimitSense::at_most,
    .source = "14 CFR 23.1325(b)(1)(i) and 23.1323(c): positive drainage of moisture",
    .mark = Mark::verified};
constexpr LimitRow shallow{
    .name = "water-that-leaves-bore-open",
    .subject =
        "trapped water that leaves part of the bore open, deeper than the build tolerance or than "
        "a quarter of the bore",
    .value = 0,
    .unit = Unit::cubic_inch,
    .sense = LimitSense::at_most,
    .source = "telling a shallow pool from one that closes the bore",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};

constexpr auto drainage_limits = limit_table({closing, shallow, least_slope});

/// However loosely a line is built, a pool deeper than this share of its bore is one.
constexpr double most_of_bore_let_pass = 0.25;

/// Raising along WL is of no use to a line lying on its side: below this share of WL that points
/// up, no height is given.
constexpr double least_upright = 0.1;
/// Low points that a mend names; the rest are counted.
constexpr std::size_t points_named = 3;

/// The attitudes to judge in, and how to speak of them.
struct JudgedIn {
  std::vector<Attitude> attitudes;
  bool stated = true;
};

JudgedIn judged_attitudes(const Project& project) {
  if (!project.attitudes.empty()) return {project.attitudes, true};
  return {{Attitude{"level flight", 0, 0, {}}}, false};
}

std::string unstated_note(const JudgedIn& judged) {
  return judged.stated ? ""
                       : " (the project states no attitudes: a parked one, nose-up on a tailwheel, "
                         "was not judged)";
}

std::string attitude_list(const JudgedIn& judged) {
  std::string list;
  for (const Attitude& attitude : judged.attitudes)
    list += (list.empty() ? "" : ", ") + attitude.name;
  return list;
}

std::string place_words(const WaterPlace& place, Vec3 at, const Phrasing& phrasing) {
  return place.node ? place.node->name : "the point at " + phrasing.place(at);
}

bool to_one_height(const std::vector<LowPoint>& points) {
  return std::all_of(points.begin(), points.end(), [&](const LowPoint& point) {
    return std::abs(point.raised_height_in - points.front().raised_height_in) < limit_rounding;
  });
}

/// Raise the drawn points that lie too low, or put a drain there.
std::string mend_words(const AirNetwork& network, const WaterTrap& trap, const Phrasing& phrasing) {
  const std::string drain = "put a drain at this place";
  const Attitude& attitude = *trap.attitude;
  const double upright = up_in_attitude(attitude.pitch_deg, attitude.roll_deg).z;
  const std::vector<LowPoint> points = points_to_raise(network, trap);
  if (points.empty() || upright < least_upright) return drain;
  const auto raised = [&](const LowPoint& point) {
    return place_words(point.place, point.at, phrasing) + " by " +
           phrasing.length(point.raise_in / upright);
  };
  std::string words = "raise ";
  for (std::size_t i = 0; i < std::min(points.size(), points_named); ++i)
    words += (i == 0 ? "" : ", ") + raised(points[i]);
  if (points.size() > points_named)
    words += (points.size() == points_named + 1
                  ? std::string(" and the other low point beside them ")
                  : " and the " + std::to_string(points.size() - points_named) +
                        " other low points beside them ") +
             (to_one_height(points) ? "to the same height in " + attitude.name : "accordingly");
  return words + ", or " + drain;
}

Judgement at_place(const RuleContext& context, const WaterPlace& place) {
  const PreparedRoute& route = *place.route;
  Judgement judgement = context.at(route, place.distance_in);
  leave_unknown(judgement, closing);
  if (!place.node) return judgement;
  judgement.with = place.node->name;
  judgement.location = place.node == route.from ? route.route->from_where : route.route->to_where;
  return judgement;
}

/// However little the water that stays: a volume that rounding hides is no pass.
void water_stays(Judgement& judgement, double volume_in3, const LimitRow& row) {
  if (volume_in3 > limit_rounding)
    holds(judgement, volume_in3, {row});
  else
    holds_true(judgement, false, row);
}

Judgement judge_trap(const RuleContext& context, const AirNetwork& network,
                     const TrapInAttitudes& trap, const JudgedIn& judged) {
  const WaterTrap& worst = trap.worst;
  const double tolerance_in = context.prepared.project->build_tolerance_in;
  const double let_pass_in = std::min(tolerance_in, most_of_bore_let_pass * worst.bore_in);
  const bool within_tolerance =
      !worst.closes_bore && trap.deepest_in <= let_pass_in + limit_rounding;
  const LimitRow& row = worst.closes_bore ? closing : shallow;
  Judgement judgement = at_place(context, worst.lowest);
  const std::string depth =
      context.phrasing.length(within_tolerance ? trap.deepest_in : worst.depth_in);
  if (within_tolerance) {
    holds_true(judgement, true, row);
    judgement.value = worst.volume_in3;
    judgement.message = "at most " + depth + " of water stands here, within the build tolerance" +
                        unstated_note(judged);
    return judgement;
  }
  water_stays(judgement, worst.volume_in3, row);
  judgement.message = "water stands " + depth + " deep " +
                      (worst.closes_bore ? "and closes the bore" : "but leaves the bore open") +
                      " in attitude " + worst.attitude->name;
  for (const std::string& other : trap.also_in) judgement.message += ", also in " + other;
  judgement.message += unstated_note(judged);
  judgement.mend = mend_words(network, worst, context.phrasing);
  return judgement;
}

bool has_outlet(const AirNetwork& network) {
  return std::any_of(network.nodes.begin(), network.nodes.end(),
                     [](const Node* node) { return lets_water_out(*node); });
}

Judgement no_way_out(const RuleContext& context, const AirNetwork& network) {
  const PreparedRoute& route = *network.links.front().route;
  Judgement judgement = at_place(context, {&route, 0, nullptr});
  judgement.location = route.route->where;
  double volume_in3 = 0;
  for (const AirLink& link : network.links) {
    const double bore_in = link.route->line->inside_diameter_in;
    volume_in3 += std::numbers::pi / 4 * bore_in * bore_in * link.route->length_in();
  }
  water_stays(judgement, volume_in3, closing);
  judgement.message =
      "no port, probe or drain lets water out of system '" + route.route->system_name + "'";
  judgement.mend = "join it to its port or probe, and put a drain at its lowest place";
  return judgement;
}

Judgement runs_dry(const RuleContext& context, const PreparedRoute& route, const JudgedIn& judged) {
  Judgement judgement = at_place(context, {&route, 0, nullptr});
  judgement.location = route.route->where;
  holds(judgement, 0, {closing});
  judgement.message = "water runs out of the whole line in each attitude (" +
                      attitude_list(judged) + ")" + unstated_note(judged);
  return judgement;
}

std::vector<Judgement> judge_drainage(const RuleContext& context) {
  const JudgedIn judged = judged_attitudes(*context.prepared.project);
  std::vector<Judgement> judgements;
  for (const AirNetwork& network : air_networks(context.prepared)) {
    if (!has_outlet(network)) {
      judgements.push_back(no_way_out(context, network));
      continue;
    }
    std::set<const PreparedRoute*> wet;
    for (const TrapInAttitudes& trap : distinct_traps(network, judged.attitudes)) {
      judgements.push_back(judge_trap(context, network, trap, judged));
      wet.insert(trap.worst.lowest.route);
      for (const WetStretch& stretch : trap.worst.wet) wet.insert(stretch.route);
    }
    for (const AirLink& link : network.links) {
      if (auto level = judge_level_runs(context, *link.route, judged.attitudes)) {
        level->message += unstated_note(judged);
        judgements.push_back(*level);
      } else if (!wet.contains(link.route)) {
        judgements.push_back(runs_dry(context, *link.route, judged));
      }
    }
  }
  return judgements;
}

}  // namespace

const Rule& drainage_rule() {
  static const Rule rule{
      .name = "drainage",
      .purpose = "water runs out of every pressure line in every attitude",
      .explanation =
          R"(Static, pitot and alpha lines are flooded, in thought, to the brim in each of the
project's `attitudes` (nose-up pitch, right-wing-down roll; level flight where none is stated)
and left to run out at their static ports, probes and drains. Water leaves a place where some
way to an outlet never rises above it; else it stands there up to the lowest crest on its way
out. Nothing runs out through an instrument, a cap or a loose end. Each pool is told once, in
its worst attitude, with its depth from the lowest place to its surface, both taken at the
middle of the bore, and the volume of bore under it; fittings and instruments add none. A pool
as deep as the bore closes it and shuts off the pressure. Depths up to the build tolerance
pass, but no more than a quarter of the bore, since the line may lie so much off anyway. A part
that lies level, or nearly so, in every attitude drains as drawn and may not as built: straights
over an inch long that fall by less than the least slope in all attitudes are told once for each
line. No least slope is published. Vents are not judged.)",
      .mend = "Let lines fall all the way to a port or drain, or put a drain at each low place.",
      .limits = drainage_limits,
      .catalogue_limits = "",
      .judge = judge_drainage};
  return rule;
}

}  // namespace linewright
