#include <algorithm>
#include <cmath>

#include "lines/edge_guard.hpp"
#include "lines/neighbour_filter.hpp"
#include "lines/own_arm.hpp"
#include "lines/part_gap.hpp"
#include "rules/rule.hpp"
#include "rules/space/bulkhead_mount.hpp"

namespace linewright {

namespace {

constexpr LimitRow stand_off{
    .name = "stand-off",
    .subject = "support from the part it is fixed to, without a bracket drawn",
    .value = 2,
    .sense = LimitSense::at_most,
    .source = "what a clamp on a stand-off spans",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};
constexpr LimitRow out_of_reach{
    .name = "out-of-reach",
    .subject = "support from the part it is fixed to",
    .value = 6,
    .sense = LimitSense::at_most,
    .source = "geometry: no clamp or bracket is drawn that reaches so far",
    .mark = Mark::calculated};
constexpr LimitRow goes_through{.name = "goes-through",
                                .subject = "bore of a guide over the largest line",
                                .value = 0,
                                .source = "geometry",
                                .mark = Mark::calculated};
constexpr LimitRow moves_in_clamp{
    .name = "moves-in-clamp",
    .subject = "travel of a cable in a clamp about it, without a sleeve",
    .value = 0,
    .sense = LimitSense::at_most,
    .source = "14 CFR 23.685(a): no jamming, chafing or interference",
    .mark = Mark::verified};

constexpr LimitRow held_by_mover{
    .name = "held-by-what-moves",
    .subject = "movement of the part that a clamp or guide is fixed to",
    .value = 0,
    .sense = LimitSense::at_most,
    .source = "geometry: what a moving part carries along holds no line in its place",
    .mark = Mark::calculated};

constexpr LimitRow off_end_fitting{
    .name = "clamp-off-end-fitting",
    .subject = "clamp on a static, pitot or alpha line from the node at its end",
    .value = 0.5,
    .source = "AC 43.13-1B para 12-61 b: no clamp at end fittings; that nut and sleeve are so long",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};

constexpr LimitRow off_nut{
    .name = "clamp-off-nut",
    .subject = "clamp on an air line from the end of the coupling nut of a fitting of known size",
    .value = 0,
    .source = "AC 43.13-1B para 12-61 b: no clamp at end fittings; a clamp fits the tube",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};

constexpr auto support_mount_limits = limit_table(
    {stand_off, out_of_reach, goes_through, moves_in_clamp, held_by_mover, off_end_fitting, off_nut,
     bulkhead_hole, bulkhead_room, bulkhead_thread, bulkhead_thread_taken, bulkhead_held,
     bulkhead_cover, bulkhead_hole_width, bulkhead_square, bulkhead_aslant});

const Mover* find_mover(const PreparedProject& prepared, const std::string& name) {
  for (const Mover& mover : prepared.project->structure.movers)
    if (mover.name == name) return &mover;
  return nullptr;
}

bool is_clamp(const PreparedRoute& route, const Support& support) {
  return support.point >= 0 &&
         route.route->points[static_cast<std::size_t>(support.point)].hold == HoldKind::clamp;
}

/// A tube or a still cable cannot follow a moving part. Whether a hose, a bundle or a casing has
/// the slack, or what becomes of a cable whose guide moves, is not worked out.
Judgement judge_carried(const RuleContext& context, const PreparedRoute& route,
                        const Support& support, const Mover& mover, const SourceLocation& where) {
  Judgement judgement = context.at(route, support.distance_in);
  judgement.location = where;
  judgement.with = mover.name;
  const double sweep_deg = std::abs(mover.sweep_to_deg - mover.sweep_from_deg);
  // The far side of the line: on the axis itself a line is twisted.
  const double carried =
      std::max(carried_in(mover, route.centreline.at(support.distance_in), sweep_deg),
               route.radius_in(support.distance_in));
  const LineKind kind = route.line->kind;
  const bool gives = kind == LineKind::hose || kind == LineKind::wire ||
                     kind == LineKind::conduit ||
                     (kind == LineKind::cable && !is_clamp(route, support));
  const std::string moved = context.phrasing.length(carried);
  if (gives) {
    leave_unknown(judgement, held_by_mover);
    judgement.message = "the " + support.name + " goes " + moved +
                        " with the moving part: whether the line gives as far is not known";
    judgement.mend =
        "fix it to something that stands still, or try the line over the whole sweep and waive "
        "this";
    return judgement;
  }
  holds(judgement, carried, {held_by_mover});
  judgement.message = "the " + support.name + " is on a moving part, which takes it " + moved +
                      " along: it holds the line nowhere";
  judgement.mend = "fix it to something that stands still";
  return judgement;
}

Judgement judge_support(const RuleContext& context, const PreparedRoute& route,
                        const Support& support, int part, const SourceLocation& where) {
  Judgement judgement = context.at(route, support.distance_in);
  judgement.location = where;
  judgement.with = support.to;
  const double gap = gap_to_part_in(context.prepared, route, support.distance_in, part);
  if (holds(judgement, gap, {out_of_reach, stand_off})) {
    judgement.message = "the " + support.name + " can reach it";
    return judgement;
  }
  judgement.message =
      "the " + support.name + " is " + context.phrasing.length(gap) + " away from it";
  judgement.mend = "name the part that holds it in `to`, or move the support to " + support.to;
  return judgement;
}

/// `frame-crossing` holds the bore of what is fitted in a hole against the line.
bool judged_in_hole(const PreparedRoute& route, const RoutePoint& point) {
  return std::any_of(route.crossings.begin(), route.crossings.end(), [&](const Crossing& crossing) {
    return crossing.hole && crossing.hole->name == point.through && is_guarded(route, crossing);
  });
}

Judgement judge_bore(const RuleContext& context, const PreparedRoute& route, std::size_t index) {
  const RoutePoint& point = route.route->points[index];
  const double along = route.point_distance_in[index];
  const double diameter = 2 * route.radius_in(along);
  const double room = *point.bore_in - diameter;
  const Phrasing& phrasing = context.phrasing;
  Judgement judgement = context.at(route, along);
  judgement.location = point.where;
  const std::string bore = "the " + phrasing.length(*point.bore_in) + " bore of the guide";
  if (!holds(judgement, room, {goes_through})) {
    judgement.message = "does not go through " + bore + ": it may be " + phrasing.length(diameter) +
                        " across there";
    judgement.mend = "fit a guide with a bore of " + phrasing.length_up(diameter) + " or more";
    return judgement;
  }
  const bool loose =
      std::any_of(route.loose_guides.begin(), route.loose_guides.end(),
                  [&](const Support& guide) { return guide.point == static_cast<int>(index); });
  judgement.message = "goes through " + bore;
  if (loose) judgement.message += ", which is too wide to hold it and does not count as a support";
  return judgement;
}

/// A clamp seizes a moving cable or saws it, unless a sleeve lies between them.
Judgement judge_clamp(const RuleContext& context, const PreparedRoute& route, std::size_t index) {
  const Phrasing& phrasing = context.phrasing;
  const RoutePoint& point = route.route->points[index];
  const double along = route.point_distance_in[index];
  Judgement judgement = context.at(route, along);
  judgement.location = point.where;
  if (!point.to.empty()) judgement.with = point.to;
  if (route.bears_clamp(along)) {
    holds_true(judgement, true, moves_in_clamp);
    judgement.message = route.sleeve_at(along) ? "the clamp holds the sleeve that the cable is in"
                                               : "the clamp holds a cable that does not move";
    return judgement;
  }
  judgement.mend = "lead the cable through a fairlead there, or put a sleeve between them";
  const auto moves = route.moves;
  if (!moves) {
    leave_unknown(judgement, moves_in_clamp);
    judgement.message =
        "whether the cable moves in the clamp about it is not known: the travel of " +
        route.route->name + " is missing";
    judgement.mend = "state the route's travel, or " + judgement.mend;
    return judgement;
  }
  holds(judgement, moves->toward_from_in + moves->toward_to_in, {moves_in_clamp});
  judgement.message = "the clamp is about a bare cable that moves " +
                      phrasing.length(*judgement.value) +
                      " through it: it seizes the cable or saws it, and counts as no support";
  return judgement;
}

bool carries_pressure(const PreparedRoute& route) {
  return is_air(route.route->system) && route.route->system != SystemKind::vent;
}

/// True where the clamp sits on the tube, past the nut: the nut's end is known of a fitting with a
/// body.
bool is_off_nut(const RuleContext& context, const Node& node, double off_in, Judgement& judgement) {
  if (node.ports.empty() || !node.body) return true;
  if (holds(judgement, off_in - node.body->beyond_face_in, {off_nut})) return true;
  judgement.message = "the clamp is " + context.phrasing.length(off_in) + " from the face of " +
                      node.name + ", on the coupling nut there, which stands out " +
                      context.phrasing.length(node.body->beyond_face_in);
  judgement.mend =
      "clamp the line itself, " +
      context.phrasing.length_up(std::max(off_end_fitting.value, node.body->beyond_face_in)) +
      " or more from the face of " + node.name;
  return false;
}

/// Only what is wrong: the clamps that sit on the fitting at one end of the line.
void judge_end_fittings(const RuleContext& context, const PreparedRoute& route,
                        std::vector<Judgement>& judgements) {
  const Phrasing& phrasing = context.phrasing;
  for (const Support& support : route.supports) {
    if (!is_clamp(route, support)) continue;
    const bool at_from = support.distance_in < route.length_in() / 2;
    const Node& node = at_from ? *route.from : *route.to;
    const double off = at_from ? support.distance_in : route.length_in() - support.distance_in;
    Judgement judgement = context.at(route, support.distance_in);
    judgement.location = route.route->points[static_cast<std::size_t>(support.point)].where;
    judgement.with = node.name;
    if (!is_off_nut(context, node, off, judgement)) {
      judgements.push_back(judgement);
      continue;
    }
    if (node.kind == NodeKind::end || !carries_pressure(route)) continue;
    if (holds(judgement, off, {off_end_fitting})) continue;
    judgement.message = "the " + support.name + " is " + phrasing.length(off) + " from " +
                        node.name + ", on the fitting there";
    judgement.mend = "clamp the line itself, " + phrasing.length_up(off_end_fitting.value) +
                     " or more from " + node.name;
    judgements.push_back(judgement);
  }
}

std::vector<Judgement> judge_support_mount(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes) {
    for (const auto* supports : {&route.supports, &route.loose_guides})
      for (const Support& support : *supports) {
        if (support.to.empty()) continue;
        const std::optional<int> part = context.prepared.obstacles.find_part(support.to);
        const RoutePoint& point = route.route->points[static_cast<std::size_t>(support.point)];
        if (part) judgements.push_back(judge_support(context, route, support, *part, point.where));
        if (const Mover* mover = find_mover(context.prepared, support.to))
          judgements.push_back(judge_carried(context, route, support, *mover, point.where));
      }
    for (const FreePassage& passage : route.free_passages) {
      const RoutePoint& fairlead = passage.fairlead();
      const Support ring{passage.distance_in, 0, "fairlead on " + fairlead.to, -1, fairlead.to};
      const std::optional<int> part = context.prepared.obstacles.find_part(fairlead.to);
      if (!fairlead.to.empty() && part)
        judgements.push_back(judge_support(context, route, ring, *part, fairlead.where));
      if (const Mover* mover = find_mover(context.prepared, fairlead.to))
        judgements.push_back(judge_carried(context, route, ring, *mover, fairlead.where));
    }
    if (is_air(route.route->system)) judge_end_fittings(context, route, judgements);
    const bool on_cable = route.line->kind == LineKind::cable;
    for (std::size_t i = 0; i < route.route->points.size(); ++i)
      if (on_cable && route.route->points[i].hold == HoldKind::clamp)
        judgements.push_back(judge_clamp(context, route, i));
    for (std::size_t i = 0; i < route.route->points.size(); ++i)
      if (route.route->points[i].bore_in && !judged_in_hole(route, route.route->points[i]))
        judgements.push_back(judge_bore(context, route, i));
  }
  judge_bulkheads(context, judgements);
  return judgements;
}

}  // namespace

const Rule& support_mount_rule() {
  static const Rule rule{
      .name = "support-mount",
      .purpose = "a support is where the part it is fixed to is, and clamps no moving cable",
      .explanation =
          R"(A clamp or guide that names the part it is fixed to (`to`) must be drawn near that part: a
support counts for spacing and chafe, and one that nothing holds would make both pass for
nothing. Measured from the line's surface at the support to the part. A support without `to` is
taken at its word. A guide whose bore is stated must let the line, or its sleeve, through; in a
frame's hole `frame-crossing` sees to that. One with a bore over twice the line's diameter does
not hold it and counts as no support. Nor does a clamp about a bare cable that moves, which it
would seize or saw: a clamp is right about a sleeve on the cable that is under all of it, 1/4 in to both
sides, which it holds, or about a cable without travel. A clamp on a static, pitot or alpha line does not sit on the fitting at its
end, which it would strain, and on no air line on the coupling nut of a fitting whose size is
stated: it fits the tube, and holds neither. A bulkhead union is held by the edge of a hole that its
nut covers: one without a hole where it stands fails, and so does one whose hole is narrower than its
`thread` or as wide as its body, or that leans in it; where no thread is stated a hole narrower than
3/16 in over the tube is unknown; where a panel, channel or solid has no hole described there the answer
is unknown. Of a mesh, and of a union without a size, no hole is asked. What is fixed to a moving part goes with it: a tube held so fails, and
whether a hose, a wire bundle or a guided cable follows it is unknown.)",
      .mend = "Name the right part, move the support, or describe the bracket as a solid.",
      .limits = support_mount_limits,
      .catalogue_limits = "",
      .judge = judge_support_mount};
  return rule;
}

}  // namespace linewright
