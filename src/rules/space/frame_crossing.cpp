#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "geometry/plane/polygon.hpp"
#include "lines/edge_guard.hpp"
#include "lines/near/mesh_crossing.hpp"
#include "lines/neighbour_filter.hpp"
#include "rules/rule.hpp"
#include "rules/shared_limits.hpp"
#include "rules/space/hole_passage.hpp"
#include "rules/space/measured_gap.hpp"
#include "rules/space/mesh_in_hole.hpp"
#include "rules/space/shared_bore.hpp"
#include "rules/space/unknown_girth.hpp"
#include "rules/space/whole_holes.hpp"
#include "rules/words/neighbour_words.hpp"

namespace linewright {

namespace {

constexpr LimitRow named_hole{.name = "named-hole",
                              .subject = "point that names a hole, from where the line passes it",
                              .value = point_at_hole_in,
                              .sense = LimitSense::at_most,
                              .source = "geometry: the point is in the hole",
                              .mark = Mark::calculated};

constexpr auto frame_crossing_limits =
    limit_table({free_of_sheet, wire_to_hole_edge, tube_to_hole_edge, cable_to_hole_edge,
                 tube_to_turned_edge, cable_to_turned_edge, guard_preload, grommet_wall, guard_wall,
                 side_by_side_in_bore, whole_guarded_hole, hole_in_wall, named_hole,
                 mesh_in_hole_limit, mesh_hole_limit, mesh_wider_limit});

Judgement through_web(const RuleContext& context, const PreparedRoute& route,
                      const Crossing& crossing) {
  Judgement judgement = context.at(route, crossing.distance_in);
  const Frame& frame = *crossing.frame;
  judgement.with = frame.name;
  judgement.message = "goes through the web of " + frame_words(frame, context.phrasing) +
                      ", where there is no hole";
  const Vec2 here = crossing.in_plane(crossing.at);
  const auto nearest_hole =
      std::min_element(frame.holes.begin(), frame.holes.end(), [&](const Hole& a, const Hole& b) {
        return edge_distance(a, here) < edge_distance(b, here);
      });
  const double radius = route.radius_in(crossing.distance_in);
  if (nearest_hole == frame.holes.end()) {
    holds(judgement, -2 * radius, {free_of_sheet});
    judgement.mend = "make a hole there with a grommet, or lead the line round the frame";
    return judgement;
  }
  const double away = edge_distance(*nearest_hole, here);
  holds(judgement, -away - radius, {free_of_sheet});
  judgement.mend = "move the line " + context.phrasing.length_up(away + radius) +
                   " or more toward hole " + nearest_hole->name +
                   ", or make a hole there with a grommet";
  return judgement;
}

/// A mesh has no holes but those that its triangles leave: what they cover is in the way.
Judgement through_mesh(const RuleContext& context, const PreparedRoute& route,
                       const MeshCrossing& crossing) {
  Judgement judgement = context.at(route, crossing.distance_in);
  const Part& part =
      context.prepared.obstacles.parts()[static_cast<std::size_t>(crossing.obstacle.part)];
  judgement.with = part.name;
  holds(judgement, -2 * route.radius_in(crossing.distance_in), {free_of_sheet});
  judgement.message = "goes through a surface of " +
                      obstacle_words(part, crossing.obstacle, context.phrasing) +
                      ", where no hole is described";
  judgement.mend =
      "lead the line round it, or describe the frame with its hole in `frames` where it has one";
  return judgement;
}

/// The crossing nearest to a place among those that count; nullptr for none.
template <typename Counts>
const Crossing* nearest_crossing(const PreparedRoute& route, double along_in,
                                 const Counts& counts) {
  const Crossing* nearest = nullptr;
  for (const Crossing& crossing : route.crossings) {
    if (!counts(crossing)) continue;
    if (!nearest ||
        std::abs(crossing.distance_in - along_in) < std::abs(nearest->distance_in - along_in))
      nearest = &crossing;
  }
  return nearest;
}

/// A point that names a hole must be where the line goes through that hole.
std::optional<Judgement> misplaced(const RuleContext& context, const PreparedRoute& route,
                                   std::size_t index) {
  const RoutePoint& point = route.route->points[index];
  if (point.through.empty()) return std::nullopt;
  const double here = route.point_distance_in[index];
  const Crossing* named = nearest_crossing(route, here, [&](const Crossing& crossing) {
    return crossing.hole && crossing.hole->name == point.through;
  });
  const double away = named ? std::abs(named->distance_in - here) : 0;
  Judgement judgement = context.at(route, here);
  if (named && holds(judgement, away, {named_hole})) return std::nullopt;
  const Crossing* other = nearest_crossing(route, here, [&](const Crossing& crossing) {
    const auto& holes = crossing.frame->holes;
    return std::any_of(holes.begin(), holes.end(),
                       [&](const Hole& hole) { return hole.name == point.through; });
  });
  // A passage through the web is a finding of its own already.
  if (!named && other && !other->hole) return std::nullopt;
  judgement.location = point.where;
  judgement.with = point.through;
  judgement.message = "said to go through hole " + point.through + ", but ";
  judgement.mend = "move the point into the hole, or name the hole it goes through";
  if (named) {
    judgement.message += "the point is " + context.phrasing.length(away) + " along from it";
  } else {
    holds_true(judgement, false, named_hole);
    judgement.message += other ? "passes the frame by hole " + other->hole->name
                               : "the line does not pass that frame";
  }
  return judgement;
}

/// A fitting in a frame's plane, on a route that ends there and goes on as another: the line goes
/// through the frame by it.
/// `routes` are all that end there.
void judge_fitting_in_web(const RuleContext& context, const Node& node,
                          const std::set<const PreparedRoute*>& routes,
                          std::vector<Judgement>& judgements) {
  if (node.kind == NodeKind::bulkhead || routes.size() < 2) return;
  for (const Frame& frame : context.prepared.project->structure.frames) {
    const Vec2 in_plane = frame.plane.seen(node.at);
    if (std::abs(frame.plane.above(node.at)) > frame.thickness_in / 2 + 1e-6 ||
        !covers(frame.outline, in_plane) ||
        std::any_of(frame.holes.begin(), frame.holes.end(),
                    [&](const Hole& hole) { return covers(hole, in_plane); }))
      continue;
    const PreparedRoute& route = **routes.begin();
    const bool start = route.from == &node;
    Judgement judgement = context.at(route, start ? 0 : route.length_in());
    judgement.location = start ? route.route->from_where : route.route->to_where;
    judgement.with = frame.name;
    holds(judgement, -2 * route.line->largest_radius_in(), {free_of_sheet});
    judgement.message = node.name + " stands in the web of " +
                        frame_words(frame, context.phrasing) + ", where there is no hole";
    judgement.mend = "make it a bulkhead union (kind: bulkhead), or move it off the frame";
    judgements.push_back(judgement);
  }
}

Judgement judge_crossing(const RuleContext& context, const PreparedRoute& route,
                         const Crossing& crossing) {
  if (!crossing.hole) return through_web(context, route, crossing);
  if (auto broken = judge_whole_hole(context, route, crossing)) return *broken;
  return judge_hole_passage(context, route, crossing);
}

std::vector<Judgement> judge_as_stated(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes) {
    if (!context.wants(route)) continue;
    for (const Crossing& crossing : route.crossings)
      judgements.push_back(judge_crossing(context, route, crossing));
    for (std::size_t i = 0; i < route.route->points.size(); ++i)
      if (const auto wrong = misplaced(context, route, i)) judgements.push_back(*wrong);
    for (const MeshCrossing& crossing : mesh_crossings(context.prepared, route))
      judgements.push_back(through_mesh(context, route, crossing));
    for (Judgement& judgement : judge_meshes_in_holes(context, route))
      judgements.push_back(std::move(judgement));
  }
  std::map<const Node*, std::set<const PreparedRoute*>> routes_at;
  for (const PreparedRoute& route : context.prepared.routes)
    for (const Node* node : {route.from, route.to}) routes_at[node].insert(&route);
  for (const Node& node : context.prepared.project->nodes)
    judge_fitting_in_web(context, node, routes_at[&node], judgements);
  for (Judgement& judgement : judge_shared_bores(context))
    judgements.push_back(std::move(judgement));
  for (Judgement& judgement : judge_holes_in_walls(context))
    judgements.push_back(std::move(judgement));
  return judgements;
}

/// Gaps to the edges of holes that were measured.
void judge_measured(const RuleContext& context, std::vector<Judgement>& judgements) {
  for (const PreparedRoute& route : context.prepared.routes)
    for (const MeasuredGap& gap : measured_gaps(context.prepared, route)) {
      if (!gap.hole) continue;
      Judgement judgement = about_measured(context, route, gap);
      judge_measured_passage(
          context, route, *gap.hole,
          *gap.measured->gap_in - context.prepared.project->measuring_tolerance_in, judgement);
      judgements.push_back(std::move(judgement));
    }
}

std::vector<Judgement> judge_frame_crossing(const RuleContext& context) {
  std::vector<Judgement> judgements = with_unknown_girths(context, free_of_sheet, judge_as_stated);
  judge_measured(context, judgements);
  return judgements;
}

}  // namespace

const Rule& frame_crossing_rule() {
  static const Rule rule{
      .name = "frame-crossing",
      .purpose = "a line goes through frames by holes, clear of their edges or guarded",
      .explanation =
          R"(Every place where the centreline, arcs included, passes a frame's plane inside its outline is
solved exactly. It must lie in a hole, and the surface of the line, less the build tolerance,
must keep clear of the hole's edge, and so must a gap to it that was measured (`built`), less
the measuring tolerance; nearer than the limit the edge needs a grommet, a bushing,
edge trim or a fairlead. A cable that moves, or whose travel is not stated, saws through trim
and grommets: it needs a fairlead or bushing that it is led through (`hold`, with `through`), or
a sleeve on guarded metal; a sleeve that states no `outside` may have a wall of 1/8 in, and where
that would break a limit the answer is unknown. A hole must leave room for its guard's wall round the line, stated
bore or not. A rolled or flanged edge cuts nothing, but is hard metal, and
stands out of the sheet by its `edge_radius`; no source is known that lets a line come nearer to it
than to a bare one. The gap is measured in space against both faces of the sheet, so a
line that leans in the hole is judged where it is nearest. A surface of a mesh that the
centreline pierces is in the way unless a described frame has a hole there; where the two do
not agree, and the line runs into what the mesh has in the frame's web, or the mesh's hole is
the larger or the smaller one, that is said.)",
      .mend = "Fit a grommet or edge trim, move the line, or enlarge the hole.",
      .limits = frame_crossing_limits,
      .catalogue_limits = "",
      .judge = judge_frame_crossing};
  return rule;
}

}  // namespace linewright
