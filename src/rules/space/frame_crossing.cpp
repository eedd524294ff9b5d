#include <algorithm>
#include <cmath>

#include "geometry/plane/polygon.hpp"
#include "lines/edge_gap.hpp"
#include "lines/near/mesh_crossing.hpp"
#include "lines/neighbour_filter.hpp"
#include "rules/rule.hpp"
#include "rules/shared_limits.hpp"
#include "rules/space/mesh_in_hole.hpp"
#include "rules/words/neighbour_words.hpp"

namespace linewright {

namespace {

constexpr LimitRow free_of_sheet{.name = "free-of-sheet",
                                 .subject = "line in a hole, free of the sheet",
                                 .value = 0,
                                 .source = "geometry",
                                 .mark = Mark::calculated};
constexpr LimitRow wire_edge{.name = "wire-to-hole-edge",
                             .subject = "wire bundle to an unguarded hole edge",
                             .value = 0.375,
                             .source = "AC 43.13-1B CHG 1 para 11-115: grommet unless 3/8 in clear",
                             .mark = Mark::verified};
constexpr LimitRow tube_edge{.name = "tube-to-hole-edge",
                             .subject = "tube or hose to an unguarded hole edge",
                             .value = 0.375,
                             .source = "borrowed from the wire rule of AC 43.13-1B para 11-115",
                             .mark = Mark::common_practice,
                             .broken = Verdict::warn};
constexpr LimitRow preload{
    .name = "preload",
    .subject = "line pressed into a grommet's wall",
    .value = 0,
    .source = "AC 43.13-1B CHG 1 para 11-115: no preload on strip or grommet",
    .mark = Mark::verified,
    .broken = Verdict::warn};
constexpr LimitRow named_hole{.name = "named-hole",
                              .subject = "point that names a hole, from where the line passes it",
                              .value = point_at_hole_in,
                              .sense = LimitSense::at_most,
                              .source = "geometry: the point is in the hole",
                              .mark = Mark::calculated};

constexpr auto limits = limit_table({free_of_sheet, wire_edge, tube_edge, cable_to_hole_edge,
                                     preload, named_hole, mesh_in_hole_limit});

const LimitRow& edge_row(LineKind kind) {
  if (kind == LineKind::wire) return wire_edge;
  return kind == LineKind::cable ? cable_to_hole_edge : tube_edge;
}

std::optional<double> stated_bore(const PreparedRoute& route, const Hole& hole) {
  const RoutePoint* point = route.point_through(hole.name);
  return point && point->bore_in ? point->bore_in : hole.bore_in;
}

Judgement through_web(const RuleContext& context, const PreparedRoute& route,
                      const Crossing& crossing) {
  Judgement judgement = context.at(route, crossing.distance_in);
  const Frame& frame = *crossing.frame;
  judgement.with = frame.name;
  judgement.message = "goes through the web of frame " + frame.name + ", where there is no hole";
  const Vec2 here{crossing.at.y, crossing.at.z};
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
  judgement.message = "goes through a surface of " + obstacle_words(part, crossing.obstacle) +
                      ", where no hole is described";
  judgement.mend =
      "lead the line round it, or describe the frame with its hole in `frames` where it has one";
  return judgement;
}

Judgement guarded_hole(const RuleContext& context, const PreparedRoute& route,
                       const Crossing& crossing, double free_in, Judgement judgement) {
  const Hole& hole = *crossing.hole;
  const double diameter = 2 * route.radius_in(crossing.distance_in);
  const std::optional<double> bore = stated_bore(route, hole);
  const Phrasing& phrasing = context.phrasing;
  if (bore && !holds(judgement, *bore - diameter, {free_of_sheet})) {
    judgement.message = "the line, " + phrasing.length(diameter) +
                        " across, does not go through the " + phrasing.length(*bore) +
                        " bore in hole " + hole.name;
    judgement.mend = "fit a guide with a bore over " + phrasing.length(diameter);
    return judgement;
  }
  const auto* circle = std::get_if<Circle>(&hole.shape);
  const double wall = bore && circle ? (circle->diameter_in - *bore) / 2 : 0;
  // The line may lie against the guide; it presses on it when drawn deeper than it could be built.
  const double tolerance = context.prepared.project->build_tolerance_in;
  const Limit unpressed{preload.value + std::max(0.0, wall - 2 * tolerance), preload};
  if (holds(judgement, free_in, {free_of_sheet, unpressed})) {
    judgement.message = "guarded in hole " + hole.name;
    return judgement;
  }
  judgement.message = "presses on the guard of hole " + hole.name;
  judgement.mend = "move the line " + phrasing.length_up(unpressed.lacking(free_in)) +
                   " toward the middle of the hole";
  return judgement;
}

/// How to get the gap wanted to an open edge: within the hole where it has the room, else by a
/// larger hole.
std::string room_mend(const RuleContext& context, const PreparedRoute& route,
                      const Crossing& crossing, double wanted_in, double gap_in) {
  const Phrasing& phrasing = context.phrasing;
  const double needed = 2 * (wanted_in + route.radius_in(crossing.distance_in) +
                             context.prepared.project->build_tolerance_in);
  const auto* circle = std::get_if<Circle>(&crossing.hole->shape);
  if (circle && circle->diameter_in < needed - limit_rounding)
    return "make the hole " + phrasing.length_up(needed) +
           " wide and lead the line through its middle";
  return "move the line " + phrasing.length_up(wanted_in - gap_in) +
         " toward the middle of the hole";
}

Judgement through_hole(const RuleContext& context, const PreparedRoute& route,
                       const Crossing& crossing) {
  const Hole& hole = *crossing.hole;
  const EdgeGap edge = edge_gap(route, crossing);
  Judgement judgement = context.at(route, edge.along_in);
  if (const RoutePoint* point = route.point_through(hole.name)) judgement.location = point->where;
  judgement.with = hole.name;
  const double free_in = edge.distance_in - route.radius_in(edge.along_in) -
                         context.prepared.project->build_tolerance_in;
  if (is_guarded(route, crossing))
    return guarded_hole(context, route, crossing, free_in, judgement);
  const LimitRow& row = edge_row(route.line->kind);
  if (holds(judgement, free_in, {free_of_sheet, row})) {
    judgement.message = "clear of the edge of hole " + hole.name;
    return judgement;
  }
  judgement.message = (judgement.limit == free_of_sheet.value ? "touches the bare edge of hole "
                                                              : "close to the bare edge of hole ") +
                      hole.name;
  judgement.mend =
      "fit a grommet or edge trim, or " + room_mend(context, route, crossing, row.value, free_in);
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
void judge_fitting_in_web(const RuleContext& context, const Node& node,
                          std::vector<Judgement>& judgements) {
  if (node.kind == NodeKind::bulkhead) return;
  std::vector<const PreparedRoute*> routes;
  for (const PreparedRoute& route : context.prepared.routes)
    if (route.from == &node || route.to == &node) routes.push_back(&route);
  if (routes.size() < 2) return;
  for (const Frame& frame : context.prepared.project->structure.frames) {
    const Vec2 in_plane{node.at.y, node.at.z};
    if (std::abs(node.at.x - frame.station_in) > frame.thickness_in / 2 + 1e-6 ||
        !covers(frame.outline, in_plane) ||
        std::any_of(frame.holes.begin(), frame.holes.end(),
                    [&](const Hole& hole) { return covers(hole, in_plane); }))
      continue;
    const PreparedRoute& route = *routes.front();
    const bool start = route.from == &node;
    Judgement judgement = context.at(route, start ? 0 : route.length_in());
    judgement.location = start ? route.route->from_where : route.route->to_where;
    judgement.with = frame.name;
    holds(judgement, -2 * route.line->largest_radius_in(), {free_of_sheet});
    judgement.message =
        node.name + " stands in the web of frame " + frame.name + ", where there is no hole";
    judgement.mend = "make it a bulkhead union (kind: bulkhead), or move it off the frame";
    judgements.push_back(judgement);
  }
}

std::vector<Judgement> judge_frame_crossing(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes) {
    for (const Crossing& crossing : route.crossings)
      judgements.push_back(crossing.hole ? through_hole(context, route, crossing)
                                         : through_web(context, route, crossing));
    for (std::size_t i = 0; i < route.route->points.size(); ++i)
      if (const auto wrong = misplaced(context, route, i)) judgements.push_back(*wrong);
    for (const MeshCrossing& crossing : mesh_crossings(context.prepared, route))
      judgements.push_back(through_mesh(context, route, crossing));
    for (Judgement& judgement : judge_meshes_in_holes(context, route))
      judgements.push_back(std::move(judgement));
  }
  for (const Node& node : context.prepared.project->nodes)
    judge_fitting_in_web(context, node, judgements);
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
must keep clear of the hole's edge; nearer than the limit the edge needs a grommet, a bushing,
edge trim or a fairlead. The gap is measured in space against both faces of the sheet, so a
line that leans in the hole is judged where it is nearest. A surface of a mesh that the
centreline pierces is in the way unless a described frame has a hole there; where the two do
not agree, and the line runs into what the mesh has in the frame's web, that is said.)",
      .mend = "Fit a grommet or edge trim, move the line, or enlarge the hole.",
      .limits = limits,
      .catalogue_limits = "",
      .judge = judge_frame_crossing};
  return rule;
}

}  // namespace linewright
