#include <algorithm>
#include <iterator>

#include "lines/edge_guard.hpp"
#include "lines/motion/reach.hpp"
#include "lines/motion/sleeve_hold.hpp"
#include "lines/near/line_neighbours.hpp"
#include "lines/neighbour_filter.hpp"
#include "rules/rule.hpp"
#include "rules/side_by_side.hpp"
#include "rules/space/added_support.hpp"
#include "rules/space/chafe_lines.hpp"
#include "rules/space/chafe_margins.hpp"
#include "rules/space/chafe_measured.hpp"
#include "rules/space/failed_clamp.hpp"
#include "rules/space/keep_off_mend.hpp"
#include "rules/space/load_factor.hpp"
#include "rules/space/slack_mend.hpp"
#include "rules/space/unknown_girth.hpp"
#include "rules/words/neighbour_words.hpp"
#include "rules/words/swung_end.hpp"

namespace linewright {

namespace {

constexpr std::string_view likely_reach = "likely reach";

constexpr LimitRow tube_rubs{.name = "tube-rubs",
                             .subject = "pressure line: gap",
                             .value = 1,
                             .source = "14 CFR 23.1325(b)(1)(ii): no chafing of tubing",
                             .mark = Mark::verified,
                             .times = likely_reach};
constexpr LimitRow cable_rubs{.name = "cable-rubs",
                              .subject = "control cable: gap",
                              .value = 1,
                              .source = "14 CFR 23.685(a), (c): no chafing, no slapping of cables",
                              .mark = Mark::verified,
                              .times = likely_reach};
constexpr LimitRow wire_rubs{
    .name = "wire-rubs",
    .subject = "wire bundle: gap",
    .value = 1,
    .source = "AC 43.13-1B para 11-115 and 11-118: touches nothing that abrades",
    .mark = Mark::verified,
    .times = likely_reach};
constexpr LimitRow casing_rubs{.name = "casing-rubs",
                               .subject = "casing of a push-pull control: gap",
                               .value = 1,
                               .source = "14 CFR 23.685(a): no jamming, chafing, interference",
                               .mark = Mark::verified,
                               .times = likely_reach};
constexpr LimitRow rod_rubs{.name = "rod-rubs",
                            .subject = "pushrod: gap",
                            .value = 1,
                            .source = "14 CFR 23.685(a): no jamming, chafing, interference",
                            .mark = Mark::verified,
                            .times = likely_reach};
constexpr LimitRow any_shape{
    .name = "any-shape",
    .subject = "any line: gap",
    .value = 1,
    .source =
        "geometry: no line that is held at both supports can come farther out than one "
        "pulled tight to a point between them",
    .mark = Mark::calculated,
    .broken = Verdict::warn,
    .times = "reach that no shape can pass"};

constexpr auto chafe_limits =
    limit_table({tube_rubs, cable_rubs, wire_rubs, casing_rubs, rod_rubs, any_shape, clamp_failed,
                 clamp_failed_by_vent, tube_clamp_failed, load_factor_row});

}  // namespace

const LimitRow& likely_row(LineKind kind) {
  if (kind == LineKind::cable) return cable_rubs;
  if (kind == LineKind::rod) return rod_rubs;
  if (kind == LineKind::conduit) return casing_rubs;
  return kind == LineKind::wire ? wire_rubs : tube_rubs;
}

bool breaks(const Approach& approach, double tolerance_in) {
  return approach.margin_in - tolerance_in < -limit_rounding;
}

const Approach& worst_place(const ReachPair& pair) {
  return pair.likely ? *pair.likely : pair.bound;
}

/// Verdict, numbers and sentence from the two margins; `tolerance_in` comes off both.
void judge_margins(const RuleContext& context, const ReachPair& pair, double tolerance_in,
                   const LimitRow& row, const std::string& what, Judgement& judgement) {
  const bool will = pair.likely.has_value();
  const Approach& place = worst_place(pair);
  const double gap = place.gap_in - tolerance_in;
  const double reach = place.gap_in - place.margin_in;
  const bool clear = holds(judgement, gap, {(will ? row : any_shape) * reach});
  const auto [gap_words, reach_words] = told_apart(
      gap, reach, [&](double value, int more) { return context.phrasing.length(value, more); });
  const std::string numbers = ": gap " + gap_words + ", reach " + reach_words;
  if (clear)
    judgement.message = "out of reach of " + what + numbers + " at the most";
  else
    judgement.message =
        will ? "can reach " + what + numbers : "might reach " + what + numbers + " at the most";
}

namespace {

/// Where one more support in the span keeps it off for good, in words; nothing where no place does.
std::optional<std::string> support_mend(const RuleContext& context, const SpanReach& reach,
                                        int part, const Counts& counts) {
  if (reach.stretch.route->line->kind == LineKind::rod) return std::nullopt;
  const std::optional<SupportPlaces> places =
      places_that_keep_off(reach, context.prepared.obstacles, part,
                           context.prepared.project->build_tolerance_in, counts);
  if (!places) return std::nullopt;
  const Phrasing& phrasing = context.phrasing;
  const double first = phrasing.tape_up(places->first_in);
  const double last = phrasing.tape_down(places->last_in);
  if (first > last) return std::nullopt;
  return "add a support between " + phrasing.tape_number(first) + " and " + phrasing.tape(last) +
         " from " + reach.stretch.route->from->name;
}

std::string structure_mend(const RuleContext& context, const SpanReach& reach, const Counts& counts,
                           const Approach& place, double lacking_in) {
  std::vector<std::string> ways =
      ways_off(context, {*reach.stretch.route, place, lacking_in, true});
  if (const auto support = support_mend(context, reach, place.obstacle->part, counts))
    ways.insert(ways.begin(), *support);
  return alternatives(ways);
}

/// True where the line's sleeve may lie against the obstacle. Against what moves it is no guard: it
/// would be struck, and jam the control.
bool sleeve_guards(const Obstacles& obstacles, const SleeveGuards& sleeves,
                   const Obstacle& obstacle, double along_in) {
  return !obstacles.parts()[static_cast<std::size_t>(obstacle.part)].moves &&
         sleeves.guard(along_in);
}

void judge_unguarded(const RuleContext& context, const SpanReach& reach,
                     const NeighbourFilter& filter, const SleeveGuards& sleeves,
                     std::vector<Judgement>& judgements) {
  const Obstacles& obstacles = context.prepared.obstacles;
  const PreparedRoute& route = *reach.stretch.route;
  const auto by_part = [](const Obstacle& obstacle) { return obstacle.part; };
  const auto counts = [&](const Obstacle& obstacle, double along) {
    return !guards_line(obstacle.guard, route) &&
           !sleeve_guards(obstacles, sleeves, obstacle, along) && filter.counts(obstacle, along) &&
           !filter.guarded_crossing_near(obstacle, along) &&
           !filter.web_crossing_near(obstacle, along) && !context.is_passed_over(route, along);
  };
  const double tolerance = context.prepared.project->build_tolerance_in;
  const double horizon = std::max(chafe_horizon_in, tolerance);
  const auto bound =
      nearest_structure(reach.stretch, Reach::bound, obstacles, horizon, by_part, counts);
  // The likely reach is the narrower everywhere: it matters only where the bound is passed.
  const bool any_passed = std::any_of(
      bound.begin(), bound.end(), [&](const auto& each) { return breaks(each.second, tolerance); });
  const auto likely = any_passed ? nearest_structure(reach.stretch, Reach::likely, obstacles,
                                                     tolerance, by_part, counts)
                                 : std::map<int, Approach>{};
  for (const auto& [index, farthest] : bound) {
    const Part& part = obstacles.parts()[static_cast<std::size_t>(index)];
    const auto found = likely.find(index);
    ReachPair pair{farthest, std::nullopt};
    if (found != likely.end() && breaks(found->second, tolerance)) pair.likely = found->second;
    const Approach& place = worst_place(pair);
    Judgement judgement = context.at(route, place.distance_in);
    judgement.with = part.name;
    judge_margins(context, pair, tolerance, likely_row(route.line->kind),
                  obstacle_words(part, *place.obstacle, context.phrasing) +
                      sawn_words(route, place.obstacle->guard),
                  judgement);
    judgement.message.insert(0, attachment_words(route, place.distance_in));
    // What its likely reach keeps off, the cable keeps off for good where nothing of it is slack.
    const std::string tightened = pair.likely || judgement.verdict == Verdict::pass
                                      ? std::string()
                                      : slack_mend(context, route);
    if (judgement.verdict != Verdict::pass)
      judgement.mend = tightened.empty() ? structure_mend(context, reach, counts, place,
                                                          tolerance - pair.bound.margin_in)
                                         : tightened;
    judgements.push_back(judgement);
  }
}

/// Lists what the line may lie against because something guards it there.
void list_guarded(const RuleContext& context, const SpanReach& reach, const NeighbourFilter& filter,
                  const SleeveGuards& sleeves, std::vector<Judgement>& judgements) {
  const Obstacles& obstacles = context.prepared.obstacles;
  const PreparedRoute& route = *reach.stretch.route;
  const auto counts = [&](const Obstacle& obstacle, double along) {
    const bool guarded = guards_line(obstacle.guard, route) ||
                         sleeve_guards(obstacles, sleeves, obstacle, along) ||
                         filter.guarded_crossing_near(obstacle, along);
    return guarded && obstacle.feature != Feature::face && filter.counts(obstacle, along);
  };
  for (const auto& [index, place] : nearest_structure(
           reach.stretch, Reach::bound, obstacles, 0.0,
           [](const Obstacle& obstacle) { return obstacle.part; }, counts)) {
    // A line drawn into the guard is no pass; clearance and frame-crossing say what is wrong.
    if (place.gap_in < 0) continue;
    const Part& part = obstacles.parts()[static_cast<std::size_t>(index)];
    Judgement judgement = context.at(route, place.distance_in);
    judgement.with = part.name;
    judgement.value = place.gap_in - context.prepared.project->build_tolerance_in;
    holds_true(judgement, true, likely_row(route.line->kind));
    judgement.message = "may lie against " +
                        obstacle_words(part, *place.obstacle, context.phrasing) +
                        ", which is guarded there";
    judgements.push_back(judgement);
  }
}

/// Of the end of a cable that leaves nothing but its swing unknown; empty where it is not that.
std::string short_arm_of(const RuleContext& context, const SpanReach& reach) {
  const PreparedRoute& route = *reach.stretch.route;
  if (!reach.hang_known || route.line->kind != LineKind::cable) return {};
  std::string words;
  if (reach.stretch.start_in <= 0) words = short_arm_words(route, RouteEnd::from, context.phrasing);
  if (words.empty() && reach.stretch.end_in >= route.length_in())
    words = short_arm_words(route, RouteEnd::to, context.phrasing);
  return words;
}

void report_missing(const RuleContext& context, const SpanReach& reach,
                    std::vector<Judgement>& judgements) {
  const Stretch& stretch = reach.stretch;
  Judgement judgement = context.at(*stretch.route, (stretch.start_in + stretch.end_in) / 2);
  const std::string short_arm = short_arm_of(context, reach);
  judgement.message = "how far the line can move is not known: " +
                      (short_arm.empty() ? reach.missing + " is missing" : short_arm);
  judgement.source = "the free-play envelope needs it (calculated)";
  judgement.mend = short_arm.empty()
                       ? "state it in the project"
                       : "state the travel that the arm gives, or its true pivot and axis";
  judgements.push_back(judgement);
}

void report_free_end(const RuleContext& context, const SpanReach& reach,
                     std::vector<Judgement>& judgements) {
  const ReachEnvelope& envelope = reach.stretch.envelope;
  const double swing = std::max(envelope.swing_first_in, envelope.swing_last_in);
  if (swing <= 0) return;
  const PreparedRoute& route = *reach.stretch.route;
  const bool at_end = envelope.swing_last_in > 0;
  const Node& node = at_end ? *route.to : *route.from;
  Judgement judgement = context.at(route, at_end ? reach.stretch.end_in : reach.stretch.start_in);
  judgement.with = node.name;
  holds(judgement, 0, {any_shape * swing});
  judgement.message = "nothing holds the end at " + node.name + ": it can swing " +
                      context.phrasing.length(swing) + " to any side";
  judgement.mend = "hold the line near its end, or state `fixed: true` for node " + node.name +
                   " where structure holds it";
  judgements.push_back(judgement);
}

std::vector<Judgement> judge_structure(const RuleContext& context, const PreparedRoute& route,
                                       const StillReaches& still) {
  std::vector<Judgement> judgements;
  const std::size_t index = context.index_of(route);
  const std::vector<SpanReach>& reaches = context.motion.reaches[index];
  const NeighbourFilter filter(context.prepared, route);
  const SleeveGuards& sleeves = context.motion.sleeves[index];
  for (std::size_t i = 0; i < reaches.size(); ++i) {
    if (!reaches[i].missing.empty()) {
      report_missing(context, reaches[i], judgements);
      continue;
    }
    report_free_end(context, reaches[i], judgements);
    judge_unguarded(context, still[index][i], filter, sleeves, judgements);
    list_guarded(context, still[index][i], filter, sleeves, judgements);
  }
  return judgements;
}

LineNeighbours neighbours_within_reach(const StillReaches& reaches) {
  std::vector<std::vector<Bounds>> bounds(reaches.size());
  for (std::size_t i = 0; i < reaches.size(); ++i)
    for (const SpanReach& reach : reaches[i])
      bounds[i].push_back(bounds_with_reach(reach.stretch, Reach::bound));
  return LineNeighbours(bounds);
}

LineNeighbours neighbours_as_they_hang(const LineMotion& motion) {
  std::vector<std::vector<Bounds>> bounds;
  for (const std::vector<Stretch>& line : motion.hanging) {
    bounds.push_back(bounds_with_reach(line, Reach::likely));
    for (const Bounds& bound : bounds_with_reach(line, Reach::bound))
      bounds.back().push_back(bound);
  }
  return LineNeighbours(bounds);
}

std::vector<Judgement> judge_as_stated(const RuleContext& context) {
  const auto& routes = context.prepared.routes;
  const StillReaches reaches(context.motion.reaches);
  std::vector<Judgement> judgements = side_by_side(routes.size(), [&](std::size_t i) {
    return context.asks_for(routes[i]) ? judge_structure(context, routes[i], reaches)
                                       : std::vector<Judgement>{};
  });
  const LineNeighbours neighbours = neighbours_within_reach(reaches);
  std::vector<Judgement> between_lines = side_by_side(routes.size(), [&](std::size_t i) {
    return chafe_of_later_lines(context, reaches, neighbours, i);
  });
  std::move(between_lines.begin(), between_lines.end(), std::back_inserter(judgements));
  const LineNeighbours hanging = neighbours_as_they_hang(context.motion);
  std::vector<Judgement> failed = side_by_side(routes.size(), [&](std::size_t i) {
    return judge_failed_clamps(context, routes[i], hanging,
                               context.prepared.project->build_tolerance_in);
  });
  std::move(failed.begin(), failed.end(), std::back_inserter(judgements));
  return judgements;
}

std::vector<Judgement> judge_chafe(const RuleContext& context) {
  std::vector<Judgement> judgements = with_unknown_girths(context, tube_rubs, judge_as_stated);
  for (Judgement& measured : chafe_of_measured_gaps(context))
    judgements.push_back(std::move(measured));
  if (auto low = judge_load_factor(context)) judgements.push_back(*std::move(low));
  return judgements;
}

}  // namespace

const Rule& chafe_rule() {
  static const Rule rule{
      .name = "chafe",
      .purpose = "no line can rub on an edge, a face or another line",
      .explanation =
          R"(Between two supports a line can move sideways. How far it is likely to move follows from its
surplus length (what a careful builder leaves, and its growth over the airframe in the
temperature range) as a slack string or a clamped tube, plus its sag under the load factor; a
cable sags under its lowest tension of the temperature range, and where another cable works the
same control, under what that one's limit load leaves it: in a rigid loop the loaded cable
stretches and the slack one gives up as much, until a cable strung without tension is all there
is to carry its weight; what is left over then counts to the bound. The end of a cable whose
node states its `arm` swings as well: that counts to all sides, falling to nothing at the
nearest guide. The most that a line of that length can come out is where it would be pulled tight to
a point between its supports. At every place along the line the gap to every unguarded edge and face and to every
other line, less the build tolerance (twice, between two lines; lines that hang on one fitting
swing with it together, which does not count between them), is held against both: within the
likely reach it fails, between the two it is a warning, beyond both it passes. Edges with
grommet, bushing or trim, and lines in a sleeve, may be touched, but not by a cable that moves,
or whose travel is not stated: it saws through all but a fairlead and a sleeve of its own. No sleeve
helps against a mover, which it would jam. A sleeve that goes with its cable guards only what it covers at every place of the travel; where it does not guard, and states
no `outside`, what a wall of 1/8 in would touch is unknown. A limp line (wire, hose, casing) keeps
no bend that it is drawn with: the most that it can come out counts from the straight between the
supports. A
cable slides in its guides: "at the most" counts all that it has over between its two ends, cold
or while the other cable of its control is pulled, in each of its spans, short of a clamp that
holds it still; what is likely is the span's share. A
hose whose length is stated has over what that is more than drawn. Attachments count at their
diameter wherever the travel takes them. Wire bundles are held against control cables, vent
lines and moving parts once more with each of their clamps let go in turn; tubes and hoses
against cables and moving parts, too, for a warning, as far as they are likely to move then. Near a fitting what it stands on
does not count (see clearance), nor do two lines near a node at which both end (see
separation). Surplus lengths are common practice without a source:
the catalogue shows them, and a project's own line may state another. A pushrod counts at every
place of its travel (rod-travel), with its sag under the load factor; its reach is that sag and what may lie between
the places looked at. A casing is held straight within 2 in past its last clamp; the wire beyond it
is judged by clearance and separation alone. Of a line that is as built (see as-built) the measuring
tolerance counts between lines in place of the build tolerance, and a gap that was measured is
judged as well. A `load_factor` that is stated lower than any aeroplane of that weight is held to is
asked about: all sag rests on it.)",
      .mend = "Add a support near the place, guard the edge, sleeve the line, or move it.",
      .limits = chafe_limits,
      .catalogue_limits = "slack, weight, stiffness and expansion of each line",
      .judge = judge_chafe,
      .leaves_out_unasked = true};
  return rule;
}

}  // namespace linewright
