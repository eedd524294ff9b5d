#include <algorithm>
#include <iterator>

#include "lines/edge_guard.hpp"
#include "lines/motion/reach.hpp"
#include "lines/near/nearest_structure.hpp"
#include "lines/neighbour_filter.hpp"
#include "rules/rule.hpp"
#include "rules/side_by_side.hpp"
#include "rules/space/fitting_bodies.hpp"
#include "rules/space/keep_off_mend.hpp"
#include "rules/space/measured_gap.hpp"
#include "rules/space/pulley_bodies.hpp"
#include "rules/space/run_out.hpp"
#include "rules/space/unknown_girth.hpp"
#include "rules/space/unknown_hang.hpp"
#include "rules/space/unknown_sweep.hpp"
#include "rules/space/unknown_swing.hpp"
#include "rules/words/neighbour_words.hpp"

namespace linewright {

namespace {

constexpr std::string_view tube_source =
    "SAE ARP994 / MIL-H-5440: 1/16 in at a support, 1/4 in elsewhere and where parts move";

constexpr std::string_view tube_figures = "borrowed from the figures for metal tube";

constexpr LimitRow drawn_into{.name = "overlap",
                              .subject = "any line to structure, as drawn",
                              .value = 0,
                              .source = "geometry: no two things in one place",
                              .mark = Mark::calculated};
constexpr LimitRow clear_of_metal_tube{.name = "metal-tube",
                                       .subject = "metal tube to structure",
                                       .value = 0.25,
                                       .source = tube_source,
                                       .mark = Mark::from_memory};
constexpr LimitRow metal_tube_at_support{
    .name = "metal-tube-at-support",
    .subject = "metal tube to structure, within 1 in of a support",
    .value = 0.0625,
    .source = tube_source,
    .mark = Mark::from_memory};
constexpr LimitRow metal_tube_to_mover_least{.name = "metal-tube-to-mover-least",
                                             .subject = "metal tube to a moving part, in any case",
                                             .value = 0.25,
                                             .source = tube_source,
                                             .mark = Mark::from_memory};
constexpr LimitRow metal_tube_to_mover{.name = "metal-tube-to-mover",
                                       .subject = "metal tube to a moving part",
                                       .value = 0.5,
                                       .source = "instrument line to moving part",
                                       .mark = Mark::common_practice,
                                       .broken = Verdict::warn};
constexpr LimitRow clear_of_soft_tube{.name = "soft-tube",
                                      .subject = "plastic tube, hose or casing to structure",
                                      .value = 0.25,
                                      .source = tube_figures,
                                      .mark = Mark::common_practice,
                                      .broken = Verdict::warn};
constexpr LimitRow soft_tube_at_support{
    .name = "soft-tube-at-support",
    .subject = "plastic tube, hose or casing, within 1 in of a support",
    .value = 0.0625,
    .source = tube_figures,
    .mark = Mark::common_practice,
    .broken = Verdict::warn};
constexpr LimitRow soft_tube_to_mover{.name = "soft-tube-to-mover",
                                      .subject = "plastic tube, hose or casing to a moving part",
                                      .value = 0.5,
                                      .source = "instrument line to moving part",
                                      .mark = Mark::common_practice,
                                      .broken = Verdict::warn};
constexpr LimitRow wire{.name = "wire",
                        .subject = "wire bundle to structure",
                        .value = 0.0625,
                        .source = tube_figures,
                        .mark = Mark::common_practice,
                        .broken = Verdict::warn};
constexpr LimitRow wire_to_mover{.name = "wire-to-mover",
                                 .subject = "wire bundle to a moving control",
                                 .value = 0.5,
                                 .source = "AC 43.13-1B para 11-125",
                                 .mark = Mark::from_memory};
constexpr LimitRow cable{.name = "cable",
                         .subject = "control cable to structure",
                         .value = 0.5,
                         .source = "where either can move",
                         .mark = Mark::common_practice,
                         .broken = Verdict::warn};
constexpr LimitRow cable_at_guide{.name = "cable-at-guide",
                                  .subject = "control cable to structure, within 1 in of a guide",
                                  .value = 0.25,
                                  .source = "next to a support",
                                  .mark = Mark::common_practice,
                                  .broken = Verdict::warn};
constexpr LimitRow cable_to_mover{.name = "cable-to-mover",
                                  .subject = "control cable to a moving part",
                                  .value = 0.5,
                                  .source = "where either can move",
                                  .mark = Mark::common_practice,
                                  .broken = Verdict::warn};

constexpr LimitRow rod{.name = "rod",
                       .subject = "pushrod to structure or to a moving part",
                       .value = 0.5,
                       .source = "where either can move",
                       .mark = Mark::common_practice,
                       .broken = Verdict::warn};

constexpr auto clearance_limits =
    limit_table({drawn_into, clear_of_metal_tube, metal_tube_at_support, metal_tube_to_mover_least,
                 metal_tube_to_mover, clear_of_soft_tube, soft_tube_at_support, soft_tube_to_mover,
                 wire, wire_to_mover, cable, cable_at_guide, cable_to_mover, rod, fitting_overlap,
                 pulley_overlap, run_out, run_out_at_end});

/// Parts farther than this are no neighbours and are not listed.
constexpr double horizon_in = 1.5;

/// `moving_least` fails where `moving` only warns.
struct Rows {
  const LimitRow* away;
  const LimitRow* at_support;
  const LimitRow* moving;
  const LimitRow* moving_least = &drawn_into;
};

Rows rows_for(LineKind kind) {
  switch (kind) {
    case LineKind::rigid_tube:
      return {&clear_of_metal_tube, &metal_tube_at_support, &metal_tube_to_mover,
              &metal_tube_to_mover_least};
    case LineKind::wire:
      return {&wire, &wire, &wire_to_mover};
    case LineKind::cable:
      return {&cable, &cable_at_guide, &cable_to_mover};
    case LineKind::rod:
      return {&rod, &rod, &rod};
    case LineKind::plastic_tube:
    case LineKind::hose:
    case LineKind::conduit:
      break;
  }
  return {&clear_of_soft_tube, &soft_tube_at_support, &soft_tube_to_mover};
}

double free_in(const RuleContext& context, const Approach& approach) {
  return approach.margin_in - context.prepared.project->build_tolerance_in;
}

/// A judgement, and what it lacks of all that is wanted there: moving the line by less mends it no
/// more than in part.
struct Judged {
  Judgement judgement;
  double lacking_in = 0;

  bool is_worse_than(const Judged& other) const {
    if (judgement.verdict != other.judgement.verdict)
      return judgement.verdict > other.judgement.verdict;
    return lacking_in > other.lacking_in;
  }
};

/// The end of a cable that may be fixed to the moving part, though no arm says so: it is near the
/// part where that is drawn. nullptr for none.
const Node* end_on(const RuleContext& context, const PreparedRoute& route, const Part& part) {
  for (const Mover& mover : context.prepared.project->structure.movers) {
    if (mover.name != part.name || !part.moves) continue;
    for (const Node* node : {route.from, route.to})
      if (end_moves(route, *node) && !node->arm && is_on(mover, node->at)) return node;
  }
  return nullptr;
}

/// Farther from the drawn end than the sag of a cable is there.
constexpr double past_end_in = 1e-4;

bool is_past_its_end(const PreparedRoute& route, const Approach& approach) {
  const bool at_end = approach.distance_in <= 0 || approach.distance_in >= route.length_in();
  return at_end && route.line->kind == LineKind::cable &&
         distance(approach.on_line, route.centreline.at(approach.distance_in)) > past_end_in;
}

Judgement judge_approach(const RuleContext& context, const PreparedRoute& route,
                         const Approach& approach, const LimitRow& least, const LimitRow& row) {
  const Part& part =
      context.prepared.obstacles.parts()[static_cast<std::size_t>(approach.obstacle->part)];
  const std::string what = obstacle_words(part, *approach.obstacle, context.phrasing) +
                           sawn_words(route, approach.obstacle->guard);
  Judgement judgement = context.at(route, approach.distance_in);
  judgement.with = part.name;
  const double free = free_in(context, approach);
  if (holds(judgement, free, {drawn_into, least, row})) {
    judgement.message = "clear of " + what;
    return judgement;
  }
  judgement.message = (judgement.limit == drawn_into.value ? "can be in " : "too near to ") + what;
  const double sag = approach.gap_in - approach.margin_in;
  if (is_past_its_end(route, approach))
    judgement.message += ", where its end swings past the place it is drawn at";
  else if (route.line->kind == LineKind::rod)
    judgement.message += route.stays() ? "" : ", somewhere on its travel";
  else if (sag > 0)
    judgement.message += ", where the cable can hang " + context.phrasing.length(sag) + " off";
  std::vector<std::string> ways =
      ways_off(context, {route, approach, Limit(row).lacking(free), sag > 0});
  if (const Node* end = end_on(context, route, part))
    ways.push_back("state the `arm` of " + end->name + ", if it turns with " + part.name);
  judgement.mend = alternatives(ways);
  return judgement;
}

/// A guarded edge may be touched, but nothing can be drawn through it.
void judge_guarded(const RuleContext& context, const PreparedRoute& route,
                   const NeighbourFilter& filter, std::vector<Judgement>& judgements) {
  const Stretch& whole = context.motion.drawn[context.index_of(route)];
  const auto counts = [&](const Obstacle& obstacle, double along) {
    return guards_line(obstacle.guard, route) && filter.counts(obstacle, along) &&
           !filter.crossing_near(obstacle, along) && !context.is_passed_over(route, along);
  };
  const auto group = [](const Obstacle& obstacle) { return obstacle.part; };
  for (const auto& [part, approach] :
       nearest_structure(whole, Reach::none, context.prepared.obstacles, 0, group, counts))
    if (approach.gap_in < -limit_rounding)
      judgements.push_back(judge_approach(context, route, approach, drawn_into, drawn_into));
}

/// Nearest approach to each part, apart for places at supports and away from them, so that each is
/// held against its own limit; the worse of the two is the judgement. A cable hangs as far off its
/// drawn place as its least tension lets it.
std::vector<Judgement> judge_route(const RuleContext& context, const PreparedRoute& route) {
  std::vector<Judgement> judgements;
  const Obstacles& obstacles = context.prepared.obstacles;
  const NeighbourFilter filter(context.prepared, route);
  const Rows rows = rows_for(route.line->kind);
  const double horizon =
      std::max(horizon_in, rows.moving->value + context.prepared.project->build_tolerance_in);
  const Reach reach = works_control(route.line->kind) ? Reach::likely : Reach::none;
  const std::vector<Stretch>& stretches = context.motion.hanging[context.index_of(route)];
  std::map<int, Judged> worst;
  for (const bool at_support : {true, false}) {
    const auto counts = [&](const Obstacle& obstacle, double along) {
      return (route.to_nearest_support_in(along) <= at_support_in) == at_support &&
             !guards_line(obstacle.guard, route) && filter.counts(obstacle, along) &&
             !filter.crossing_near(obstacle, along) && !context.is_passed_over(route, along) &&
             !is_of_a_line(context.prepared, obstacle);
    };
    const auto group = [](const Obstacle& obstacle) { return obstacle.part; };
    for (const Stretch& stretch : stretches) {
      if (is_run_out(stretch)) continue;
      for (const auto& [part, approach] :
           nearest_structure(stretch, reach, obstacles, horizon, group, counts)) {
        const bool moves = obstacles.parts()[static_cast<std::size_t>(part)].moves;
        const LimitRow& row = moves ? *rows.moving : at_support ? *rows.at_support : *rows.away;
        const LimitRow& least = moves ? *rows.moving_least : drawn_into;
        Judged judged{judge_approach(context, route, approach, least, row),
                      Limit(row).lacking(free_in(context, approach))};
        judged.judgement.message.insert(0, attachment_words(route, approach.distance_in));
        const auto known = worst.find(part);
        if (known == worst.end() || judged.is_worse_than(known->second))
          worst[part] = std::move(judged);
      }
    }
  }
  for (const auto& [part, judged] : worst) judgements.push_back(judged.judgement);
  judge_guarded(context, route, filter, judgements);
  for (Judgement& judgement : judge_pulley_bodies(context, route))
    judgements.push_back(std::move(judgement));
  for (Judgement& judgement : judge_run_outs(context, route, drawn_into))
    judgements.push_back(std::move(judgement));
  if (auto unknown = judge_unknown_hang(context, route, cable))
    judgements.push_back(*std::move(unknown));
  for (Judgement& unknown : judge_unknown_swings(context, route, filter, cable))
    judgements.push_back(std::move(unknown));
  if (const auto unknown =
          unknown_sweep(context, route, route.line->kind == LineKind::rod ? rod : run_out)) {
    drop_passes(judgements);
    judgements.push_back(*unknown);
  }
  return judgements;
}

/// Where the meshes' files were not read, nothing is known of the gaps to them.
void judge_unread_meshes(const RuleContext& context, std::vector<Judgement>& judgements) {
  if (!context.prepared.obstacles.meshes().empty()) return;
  for (const Mesh& mesh : context.prepared.project->structure.meshes) {
    Judgement judgement = context.about(mesh.name, mesh.where);
    judgement.message = "the gap to mesh " + mesh.name + " is not measured: its file was not read";
    judgement.source = "the mesh's file";
    judgement.mend = "describe what is near the lines as channels, panels or solids";
    judgements.push_back(judgement);
  }
}

std::vector<Judgement> judge_as_stated(const RuleContext& context) {
  std::vector<Judgement> judgements;
  judge_unread_meshes(context, judgements);
  for (Judgement& judgement : judge_fitting_bodies(context))
    judgements.push_back(std::move(judgement));
  const auto& routes = context.prepared.routes;
  std::vector<Judgement> of_routes = side_by_side(routes.size(), [&](std::size_t i) {
    return context.asks_for(routes[i]) ? judge_route(context, routes[i]) : std::vector<Judgement>{};
  });
  std::move(of_routes.begin(), of_routes.end(), std::back_inserter(judgements));
  return judgements;
}

/// A gap to something that nobody has drawn is one to structure.
std::vector<Limit> limits_of_gap(const PreparedRoute& route, const MeasuredGap& gap) {
  if (gap.hole || gap.line) return {};
  if (gap.drawn && gap.drawn->obstacle && guards_line(gap.drawn->obstacle->guard, route))
    return {drawn_into};
  const Rows rows = rows_for(route.line->kind);
  if (gap.part && gap.part->moves) return {drawn_into, *rows.moving_least, *rows.moving};
  const bool at_support = route.to_nearest_support_in(gap.distance_in) <= at_support_in;
  return {drawn_into, at_support ? *rows.at_support : *rows.away};
}

std::vector<Judgement> judge_clearance(const RuleContext& context) {
  std::vector<Judgement> judgements = with_unknown_girths(context, drawn_into, judge_as_stated);
  for (Judgement& measured : judge_measured_gaps(context, limits_of_gap))
    judgements.push_back(std::move(measured));
  return judgements;
}

}  // namespace

const Rule& clearance_rule() {
  static const Rule rule{
      .name = "clearance",
      .purpose = "the drawn line keeps its distance from structure and moving parts",
      .explanation =
          R"(The least free distance between the line's surface, at its largest real diameter or in its
sleeve, and every part within 1.5 in, less the build tolerance. Moving parts count at every
place of their sweep; only the arm that a cable's own end is fixed to is passed over, that piece
of it, and as far from the end as its sweep takes it: where the node's `arm` turns on that
part's axis. Meshes count by their triangles and sharp edges. Not counted: the frame a
line goes through, within 1 in of its hole (frame-crossing judges that), also where a mesh has
that web once more; edges with trim, grommet or bushing, except by a cable that moves; and within
1 in of a fitting that structure holds: the face that it stands on (the nearest of a part, within
1/2 in, skin and doubler to 1/8 in deep), where the line comes no nearer to it than the fitting
is and leaves it at 30 degrees or is clear of it; an edge or another face within 1/2 in that the
line leads away from at once, without lying over it. `check --verbose` lists what was passed
over. From a cable's gap comes off what it can hang away from its drawn place: its play in the guides, its sag under the load factor at its lowest tension, as chafe works it
out, and the swing of an end whose node states its `arm`, to all sides, falling to nothing at
the nearest guide; where its hang is not known the answer is unknown, too. What such an end sweeps beyond its drawn place is judged along its own
way. Where an end on a horn or pedal states no `arm`, or the cable no travel, and something is
so near to the last leg that a square arm could take the cable there, the answer is unknown.
The bodies of fittings whose size is
known must stand free of all structure that they are not mounted on, and of each other; what a
held one is mounted on is the nearest part within 1/2 in of its node, and sheets no more than 1/8 in
farther off, but nothing that moves, nor what one of its axes goes through without a hole. Lines keep off them as
off the line that the fitting is of: separation judges that. Pulleys count as moving parts, with their flanges, but for the cable that bears on them and
for those on the same spindle beside it. Their own bodies must stand free of all structure, moving
parts at every place of their sweep, but for the part that the pulley's point names in `to`; and of
each other, where on one spindle no tolerance counts. A hole that is large enough lets one through a
frame. Where no `outside` or `width` is stated, what only the usual size (flanges a cable's diameter
beyond the groove, two of them wide) would meet is unknown, and so is a pulley that the cable runs
straight by, unless its centre is given. A sleeve that states no `outside` may have a wall of
1/8 in: where that would break a limit, the answer is unknown, too. A pushrod counts at every place
of its travel, in the holes that it goes through too; where an arm or the travel is not stated, or an
arm cannot follow, its gaps are unknown. Beyond the ends of a casing its wire counts, as thick
as the casing: pushed all the way out straight on, or wherever its pin takes it where its run_out
states an arm; but not against what the end stands on, where the wire leads away from it or goes
through it at 45 degrees or steeper, nor against the piece of the moving part that turns on that arm's
axis and has the pin on it. Without travel or
run_out that is unknown. How far other lines can move is judged by chafe. A gap that was measured
(`built`) is judged as well, less the measuring tolerance.)",
      .mend = "Move the line, or hold it off with a stand-off.",
      .limits = clearance_limits,
      .catalogue_limits = "",
      .judge = judge_clearance,
      .leaves_out_unasked = true};
  return rule;
}

}  // namespace linewright
