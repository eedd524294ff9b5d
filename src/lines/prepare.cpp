#include "lines/prepare.hpp"

#include <algorithm>
#include <cmath>

#include "geometry/plane/polygon.hpp"
#include "geometry/slight_corners.hpp"
#include "lines/arm_swing.hpp"
#include "lines/crossings.hpp"
#include "lines/named_hole.hpp"
#include "lines/own_arm.hpp"
#include "model/nodes_by_name.hpp"
#include "model/sheet.hpp"
#include "model/support_name.hpp"

namespace linewright {

namespace {

std::optional<double> bore_of(const Hole& hole) {
  return hole.bore_in ? hole.bore_in : usual_bore_in(hole);
}

double play_in_bore(std::optional<double> bore_in, const Line& line) {
  if (!bore_in) return guide_play_in;
  return std::max(0.0, (*bore_in - line.outside_diameter_in) / 2);
}

bool holds(double bore_in, const Line& line) {
  return bore_in <= holding_bore_ratio * line.outside_diameter_in + 1e-9;
}

/// The bore of a stated grommet, bushing or fairlead, as far as it is known.
std::optional<double> guide_bore(const RoutePoint& point, const Hole* hole) {
  if (point.hold == HoldKind::clamp || point.hold == HoldKind::pulley) return std::nullopt;
  if (point.bore_in || !hole) return point.bore_in;
  return bore_of(*hole);
}

Support stated_support(const RoutePoint& point, const Hole* hole, const Line& line) {
  Support support;
  support.to = point.to;
  support.name = support_name(point);
  switch (*point.hold) {
    case HoldKind::clamp:
      support.play_in = clamp_play_in;
      break;
    case HoldKind::pulley:
      support.play_in = 0;
      break;
    case HoldKind::grommet:
    case HoldKind::bushing:
    case HoldKind::fairlead:
      support.play_in = play_in_bore(guide_bore(point, hole), line);
      break;
  }
  return support;
}

/// A guarded hole holds a line that nearly fills its bore.
std::optional<Support> hole_support(const RoutePoint& point, const Hole* hole, const Line& line) {
  if (!hole || (hole->edge != EdgeGuard::grommet && hole->edge != EdgeGuard::bushing))
    return std::nullopt;
  const std::optional<double> bore = point.bore_in ? point.bore_in : bore_of(*hole);
  if (!bore || !holds(*bore, line)) return std::nullopt;
  Support support;
  support.play_in = play_in_bore(bore, line);
  support.name =
      std::string(hole->edge == EdgeGuard::grommet ? "grommet " : "bushing ") + hole->name;
  return support;
}

/// Fills in the supports, and the guides that do not hold: too wide a bore, or a hole that runs
/// into another or out of its frame, so that nothing is left to fit a guide in.
void find_supports(const Project& project, const Walls& walls, PreparedRoute& prepared) {
  std::vector<Support>& supports = prepared.supports;
  if (prepared.from->held()) supports.push_back({0, 0, prepared.from->name, -1, {}});
  for (std::size_t i = 0; i < prepared.route->points.size(); ++i) {
    const RoutePoint& point = prepared.route->points[i];
    const NamedHole named = find_hole(project, walls, point.through);
    const Hole* hole = named.hole;
    std::optional<Support> support = point.hold ? stated_support(point, hole, *prepared.line)
                                                : hole_support(point, hole, *prepared.line);
    if (!support) continue;
    support->distance_in = prepared.point_distance_in[i];
    support->point = static_cast<int>(i);
    const std::optional<double> bore = point.hold ? guide_bore(point, hole) : std::nullopt;
    const bool seized =
        point.hold == HoldKind::clamp && !prepared.bears_clamp(support->distance_in);
    const bool loose = seized || !named.is_whole || (bore && !holds(*bore, *prepared.line));
    (loose ? prepared.loose_guides : supports).push_back(*support);
  }
  if (prepared.to->held()) supports.push_back({prepared.length_in(), 0, prepared.to->name, -2, {}});
}

void swing_end(Support& end, const ArmSwing& swing) {
  end.play_in = swing.sideways_in;
  end.comes_in_in = swing.inward_in;
}

/// A cable's end on an arm is held, but not still.
void let_arms_swing(PreparedRoute& prepared) {
  if (prepared.line->kind != LineKind::cable) return;
  for (Support& support : prepared.supports) {
    if (support.point >= 0) continue;
    const RouteEnd end = support.point == -1 ? RouteEnd::from : RouteEnd::to;
    const Node& node = end == RouteEnd::from ? *prepared.from : *prepared.to;
    if (!node.arm || !end_moves(prepared, node)) continue;
    const auto swing = arm_swing(prepared, end);
    if (!prepared.moves)
      support.missing = "the travel of " + prepared.route->name;
    else if (swing && swing->reaches)
      swing_end(support, *swing);
    else
      support.missing = "an arm at " + support.name + " that gives the travel";
  }
}

std::vector<SweptPart> swept_parts(const PreparedRoute& prepared) {
  const Movement moves = prepared.moves.value_or(Movement{});
  std::vector<SweptPart> parts;
  for (const Attachment& each : prepared.route->attached) {
    const double half = each.longest_in() / 2;
    parts.push_back(
        {each.at_in - half - moves.toward_from_in, each.at_in + half + moves.toward_to_in, &each});
  }
  return parts;
}

std::vector<Span> find_spans(const std::vector<Support>& supports, double length_in) {
  std::vector<Span> spans;
  double start = 0;
  int first = -1;
  for (std::size_t i = 0; i < supports.size(); ++i) {
    const double here = supports[i].distance_in;
    if (here - start > 1e-9) spans.push_back({start, here, first, static_cast<int>(i)});
    start = here;
    first = static_cast<int>(i);
  }
  if (length_in - start > 1e-9) spans.push_back({start, length_in, first, -1});
  return spans;
}

std::vector<GivenPlace> places_of(const Route& route, Vec3 from, Vec3 to, const Line& line) {
  std::vector<GivenPlace> places{{{from, 0}, std::nullopt}};
  for (const RoutePoint& point : route.points) {
    GivenPlace place{{point.at, drawn_radius_in(point, line)}, std::nullopt};
    if (point.given == PointGiven::centre && point.diameter_in && point.axis)
      place.pulley = WrapCircle{point.at, *point.diameter_in / 2, unit(*point.axis)};
    places.push_back(place);
  }
  places.push_back({{to, 0}, std::nullopt});
  return places;
}

/// Marks the corners that are there because a tape is not a micrometer. A bend that is stated is
/// meant, and a pulley turns the cable however little.
void mark_slight(std::vector<PathCorner>& corners, const Route& route, double build_tolerance_in) {
  std::vector<bool> may_be(corners.size(), false);
  for (std::size_t i = 0; i < route.points.size(); ++i)
    may_be[i + 1] = !route.points[i].bend_in && route.points[i].hold != HoldKind::pulley;
  const std::vector<bool> slight = slight_corners(corners, may_be, build_tolerance_in);
  for (std::size_t i = 0; i < corners.size(); ++i) corners[i].slight = slight[i];
}

struct DrawnLine {
  Centreline centreline;
  std::vector<std::optional<WrapFault>> wrap_faults;  ///< of each of the route's points
};

DrawnLine drawn_line(const Project& project, const Route& route, const Line& line, const Node& from,
                     const Node& to) {
  WrappedPath path = wrap_pulleys(places_of(route, end_place(from, from.find_port(route.from_port)),
                                            end_place(to, to.find_port(route.to_port)), line));
  mark_slight(path.corners, route, project.build_tolerance_in);
  return {Centreline(path.corners), {path.faults.begin() + 1, path.faults.end() - 1}};
}

/// From each place of the line that was measured to the next, where that was, too.
std::vector<AsBuiltPart> as_built_parts(const PreparedRoute& prepared) {
  std::vector<AsBuiltPart> parts;
  bool before = prepared.from->drawn_at.has_value();
  double start_in = 0;
  const auto add = [&](double end_in, bool measured) {
    if (before && measured) parts.push_back({start_in, end_in});
    before = measured;
    start_in = end_in;
  };
  for (std::size_t i = 0; i < prepared.point_distance_in.size(); ++i)
    add(prepared.point_distance_in[i], prepared.route->points[i].drawn_at.has_value());
  add(prepared.length_in(), prepared.to->drawn_at.has_value());
  return parts;
}

PreparedRoute prepare_route(const Project& project, const NodesByName& nodes, const Walls& walls,
                            const Route& route) {
  const Node* from = nodes.find(route.from);
  const Node* to = nodes.find(route.to);
  const Line* line = project.catalogue.find_line(route.line);
  DrawnLine drawn = drawn_line(project, route, *line, *from, *to);
  PreparedRoute prepared{.route = &route,
                         .line = line,
                         .from = from,
                         .to = to,
                         .centreline = std::move(drawn.centreline)};
  prepared.from_port = from->find_port(route.from_port);
  prepared.to_port = to->find_port(route.to_port);
  prepared.moves = movement(route, *line, prepared.centreline);
  prepared.wrap_faults = std::move(drawn.wrap_faults);
  for (std::size_t i = 0; i < route.points.size(); ++i)
    prepared.point_distance_in.push_back(
        prepared.centreline.corner_distance_in(static_cast<int>(i) + 1));
  prepared.as_built = as_built_parts(prepared);
  prepared.swept_by_attachments = swept_parts(prepared);
  for (const FreeFairlead& free : route.free_fairleads) {
    const NamedHole in = find_hole(project, walls, free.fairlead.through);
    prepared.free_passages.push_back(
        free_passage(prepared.centreline, free, in.frame ? &in.frame->plane : nullptr));
  }
  find_supports(project, walls, prepared);
  let_arms_swing(prepared);
  prepared.spans = find_spans(prepared.supports, prepared.length_in());
  prepared.crossings = find_crossings(prepared.centreline, project.structure.frames, walls);
  return prepared;
}

}  // namespace

std::optional<double> usual_bore_in(const Hole& hole) {
  const auto* circle = std::get_if<Circle>(&hole.shape);
  if (!circle) return std::nullopt;
  if (hole.edge == EdgeGuard::grommet) return circle->diameter_in - grommet_hole_over_bore_in;
  if (hole.edge == EdgeGuard::bushing) return circle->diameter_in - bushing_hole_over_bore_in;
  return std::nullopt;
}

double drawn_radius_in(const RoutePoint& point, const Line& line) {
  if (point.bend_in) return *point.bend_in;
  if (point.hold == HoldKind::pulley && point.diameter_in) return *point.diameter_in / 2;
  if (line.kind == LineKind::cable) return 0;
  return line.usual_bend_radius_in.value_or(0);
}

Centreline drawn_centreline(const Project& project, const Route& route) {
  return drawn_line(project, route, *project.catalogue.find_line(route.line),
                    *project.find_node(route.from), *project.find_node(route.to))
      .centreline;
}

namespace {

std::vector<std::vector<std::size_t>> routes_of_nodes(const Project& project,
                                                      const std::vector<PreparedRoute>& routes) {
  std::vector<std::vector<std::size_t>> of_nodes(project.nodes.size());
  const auto of_node = [&](const Node* node) -> std::vector<std::size_t>& {
    return of_nodes[static_cast<std::size_t>(node - project.nodes.data())];
  };
  for (std::size_t i = 0; i < routes.size(); ++i) {
    of_node(routes[i].from).push_back(i);
    of_node(routes[i].to).push_back(i);
  }
  return of_nodes;
}

}  // namespace

PreparedProject prepare(const Project& project, const MeshFields& meshes) {
  return prepare_in(Obstacles(project.structure, meshes), project);
}

PreparedProject prepare_in(Obstacles structure, const Project& project) {
  PreparedProject prepared{&project, {}, std::move(structure)};
  prepared.walls = find_walls(project, prepared.obstacles);
  prepared.routes.reserve(project.routes.size());
  const NodesByName nodes(project);
  for (const Route& route : project.routes)
    prepared.routes.push_back(prepare_route(project, nodes, prepared.walls, route));
  prepared.routes_of_nodes = routes_of_nodes(project, prepared.routes);
  prepared.fittings = fittings_of(project);
  std::vector<FittingSolid> solids;
  for (const NodeFitting& fitting : prepared.fittings) solids.push_back(solid_of(fitting));
  prepared.pulleys = pulleys_of(prepared.routes);
  std::vector<PulleyBody> bodies;
  for (const RoutePulley& pulley : prepared.pulleys) bodies.push_back(pulley.body);
  prepared.obstacles.add_bodies(solids, bodies);
  return prepared;
}

}  // namespace linewright
