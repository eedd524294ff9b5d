#include "rules/frame_crossing.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "geometry/edge_gap.hpp"
#include "geometry/polygon.hpp"
#include "rules/mesh_crossing.hpp"
#include "rules/mesh_in_hole.hpp"
#include "rules/neighbour_filter.hpp"
#include "rules/neighbour_words.hpp"

namespace linewright {

namespace {

constexpr std::array<LimitRow, 7> limits{{
    {"line in a hole, free of the sheet", 0, "in", "geometry", Mark::calculated, Verdict::fail},
    {"wire bundle to an unguarded hole edge", 0.375, "in",
     "AC 43.13-1B CHG 1 para 11-115: grommet unless 3/8 in clear", Mark::verified, Verdict::fail},
    {"tube or hose to an unguarded hole edge", 0.375, "in",
     "borrowed from the wire rule of AC 43.13-1B para 11-115", Mark::common_practice,
     Verdict::warn},
    {"control cable to an unguarded hole edge", 0.5, "in", "where either can move",
     Mark::common_practice, Verdict::warn},
    {"line pressed into a grommet's wall", 0, "in",
     "AC 43.13-1B CHG 1 para 11-115: no preload on strip or grommet", Mark::verified,
     Verdict::warn},
    {"point that names a hole, from where the line passes it", point_at_hole_in, "in",
     "geometry: the point is in the hole", Mark::calculated, Verdict::fail},
    mesh_in_hole_limit,
}};
constexpr const LimitRow& named_hole = limits[5];
constexpr const LimitRow& free_of_sheet = limits[0];
constexpr const LimitRow& wire_edge = limits[1];
constexpr const LimitRow& tube_edge = limits[2];
constexpr const LimitRow& cable_edge = limits[3];
constexpr const LimitRow& preload = limits[4];

const LimitRow& edge_row(LineKind kind) {
  if (kind == LineKind::wire) return wire_edge;
  return kind == LineKind::cable ? cable_edge : tube_edge;
}

std::optional<double> stated_bore(const PreparedRoute& route, const Hole& hole) {
  const RoutePoint* point = route.point_through(hole.name);
  return point && point->bore_in ? point->bore_in : hole.bore_in;
}

Judgement through_web(const RuleContext& context, const PreparedRoute& route,
                      const Crossing& crossing) {
  Judgement judgement = judgement_at(frame_crossing_rule(), route, crossing.distance_in);
  const Frame& frame = *crossing.frame;
  judgement.with = frame.name;
  judgement.verdict = free_of_sheet.broken;
  judgement.message = "goes through the web of frame " + frame.name + ", where there is no hole";
  judgement.source = cite(free_of_sheet);
  judgement.limit = 0;
  const Vec2 here{crossing.at.y, crossing.at.z};
  const auto nearest_hole =
      std::min_element(frame.holes.begin(), frame.holes.end(), [&](const Hole& a, const Hole& b) {
        return edge_distance(a, here) < edge_distance(b, here);
      });
  const double radius = route.radius_in(crossing.distance_in);
  if (nearest_hole == frame.holes.end()) {
    judgement.value = -2 * radius;
    judgement.mend = "make a hole there with a grommet, or lead the line round the frame";
    return judgement;
  }
  const double away = edge_distance(*nearest_hole, here);
  judgement.value = -away - radius;
  judgement.mend = "move the line " + context.phrasing.length_up(away + radius) +
                   " or more toward hole " + nearest_hole->name +
                   ", or make a hole there with a grommet";
  return judgement;
}

/// A mesh has no holes but those that its triangles leave: what they cover is in the way.
Judgement through_mesh(const RuleContext& context, const PreparedRoute& route,
                       const MeshCrossing& crossing) {
  Judgement judgement = judgement_at(frame_crossing_rule(), route, crossing.distance_in);
  const Part& part =
      context.prepared.obstacles.parts()[static_cast<std::size_t>(crossing.obstacle.part)];
  judgement.with = part.name;
  judgement.verdict = free_of_sheet.broken;
  judgement.value = -2 * route.radius_in(crossing.distance_in);
  judgement.limit = 0;
  judgement.source = cite(free_of_sheet);
  judgement.message = "goes through a surface of " + obstacle_words(part, crossing.obstacle) +
                      ", where no hole is described";
  judgement.mend =
      "lead the line round it, or describe the frame with its hole in `frames` where it has one";
  return judgement;
}

Judgement guarded_hole(const RuleContext& context, const PreparedRoute& route,
                       const Crossing& crossing, Judgement judgement) {
  const Hole& hole = *crossing.hole;
  const double diameter = 2 * route.radius_in(crossing.distance_in);
  const std::optional<double> bore = stated_bore(route, hole);
  const Phrasing& phrasing = context.phrasing;
  if (bore && diameter > *bore + limit_rounding_in) {
    judgement.verdict = free_of_sheet.broken;
    judgement.value = *bore - diameter;
    judgement.limit = 0;
    judgement.source = cite(free_of_sheet);
    judgement.message = "the line, " + phrasing.length(diameter) +
                        " across, does not go through the " + phrasing.length(*bore) +
                        " bore in hole " + hole.name;
    judgement.mend = "fit a guide with a bore over " + phrasing.length(diameter);
    return judgement;
  }
  const auto* circle = std::get_if<Circle>(&hole.shape);
  const double wall = bore && circle ? (circle->diameter - *bore) / 2 : 0;
  // The line may lie against the guide; it presses on it when drawn deeper than it could be built.
  const double tolerance = context.prepared.project->build_tolerance_in;
  judgement.limit = std::max(0.0, wall - 2 * tolerance);
  judgement.source = cite(preload);
  if (*judgement.value >= *judgement.limit - limit_rounding_in) {
    judgement.verdict = Verdict::pass;
    judgement.message = "guarded in hole " + hole.name;
    return judgement;
  }
  judgement.verdict = *judgement.value < 0 ? free_of_sheet.broken : preload.broken;
  judgement.message = "presses on the guard of hole " + hole.name;
  judgement.mend = "move the line " + phrasing.length_up(*judgement.limit - *judgement.value) +
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
  if (circle && circle->diameter < needed - limit_rounding_in)
    return "make the hole " + phrasing.length_up(needed) +
           " wide and lead the line through its middle";
  return "move the line " + phrasing.length_up(wanted_in - gap_in) +
         " toward the middle of the hole";
}

Judgement through_hole(const RuleContext& context, const PreparedRoute& route,
                       const Crossing& crossing) {
  const Hole& hole = *crossing.hole;
  const EdgeGap edge = edge_gap(route, crossing);
  Judgement judgement = judgement_at(frame_crossing_rule(), route, edge.along_in);
  if (const RoutePoint* point = route.point_through(hole.name)) judgement.location = point->where;
  judgement.with = hole.name;
  judgement.value = edge.distance_in - route.radius_in(edge.along_in) -
                    context.prepared.project->build_tolerance_in;
  if (is_guarded(route, crossing)) return guarded_hole(context, route, crossing, judgement);
  const LimitRow& row = edge_row(route.line->kind);
  judgement.limit = row.value;
  judgement.source = cite(row);
  if (*judgement.value >= row.value - limit_rounding_in) {
    judgement.verdict = Verdict::pass;
    judgement.message = "clear of the edge of hole " + hole.name;
    return judgement;
  }
  const bool touches = *judgement.value < 0;
  judgement.verdict = touches ? free_of_sheet.broken : row.broken;
  if (touches) judgement.source = cite(free_of_sheet);
  judgement.message =
      (touches ? "touches the bare edge of hole " : "close to the bare edge of hole ") + hole.name;
  judgement.mend = "fit a grommet or edge trim, or " +
                   room_mend(context, route, crossing, row.value, *judgement.value);
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
  if (named && away <= named_hole.value + limit_rounding_in) return std::nullopt;
  const Crossing* other = nearest_crossing(route, here, [&](const Crossing& crossing) {
    const auto& holes = crossing.frame->holes;
    return std::any_of(holes.begin(), holes.end(),
                       [&](const Hole& hole) { return hole.name == point.through; });
  });
  // A passage through the web is a finding of its own already.
  if (!named && other && !other->hole) return std::nullopt;
  Judgement judgement = judgement_at(frame_crossing_rule(), route, here);
  judgement.location = point.where;
  judgement.with = point.through;
  judgement.verdict = named_hole.broken;
  judgement.source = cite(named_hole);
  judgement.message = "said to go through hole " + point.through + ", but ";
  judgement.mend = "move the point into the hole, or name the hole it goes through";
  if (named) {
    judgement.sense = LimitSense::at_most;
    judgement.value = away;
    judgement.limit = named_hole.value;
    judgement.message += "the point is " + context.phrasing.length(away) + " along from it";
  } else {
    judgement.message += other ? "passes the frame by hole " + other->hole->name
                               : "the line does not pass that frame";
  }
  return judgement;
}

/// A fitting in a frame's plane, on a route that ends there and goes on as another: the line goes
/// through the frame by it.
void judge_fitting_in_web(const PreparedProject& prepared, const Node& node,
                          std::vector<Judgement>& judgements) {
  if (node.kind == NodeKind::bulkhead) return;
  std::vector<const PreparedRoute*> routes;
  for (const PreparedRoute& route : prepared.routes)
    if (route.from == &node || route.to == &node) routes.push_back(&route);
  if (routes.size() < 2) return;
  for (const Frame& frame : prepared.project->structure.frames) {
    const Vec2 in_plane{node.at.y, node.at.z};
    if (std::abs(node.at.x - frame.station) > frame.thickness / 2 + 1e-6 ||
        !covers(frame.outline, in_plane) ||
        std::any_of(frame.holes.begin(), frame.holes.end(),
                    [&](const Hole& hole) { return covers(hole, in_plane); }))
      continue;
    const PreparedRoute& route = *routes.front();
    const bool start = route.from == &node;
    Judgement judgement = judgement_at(frame_crossing_rule(), route, start ? 0 : route.length_in());
    judgement.location = start ? route.route->from_where : route.route->to_where;
    judgement.with = frame.name;
    judgement.verdict = free_of_sheet.broken;
    judgement.value = -2 * route.line->largest_radius_in();
    judgement.limit = 0;
    judgement.source = cite(free_of_sheet);
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
    judge_fitting_in_web(context.prepared, node, judgements);
  return judgements;
}

}  // namespace

const Rule& frame_crossing_rule() {
  static const Rule rule{
      .name = "frame-crossing",
      .purpose = "a line goes through frames by holes, clear of their edges or guarded",
      .explanation =
          "Every place where the centreline, arcs included, passes a frame's plane inside its "
          "outline is solved exactly. It must lie in a hole, and the surface of the line, less the "
          "build tolerance, must keep clear of the hole's edge; nearer than the limit the edge "
          "needs "
          "a grommet, a bushing, edge trim or a fairlead. The gap is measured in space against "
          "both "
          "faces of the sheet, so a line that leans in the hole is judged where it is nearest. A "
          "surface of a mesh that the centreline pierces is in the way unless a described frame "
          "has a hole there; where the two do not agree, and the line runs into what the mesh has "
          "in "
          "the frame's web, that is said.",
      .mend = "Fit a grommet or edge trim, move the line, or enlarge the hole.",
      .limits = limits,
      .catalogue_limits = "",
      .judge = judge_frame_crossing};
  return rule;
}

}  // namespace linewright
