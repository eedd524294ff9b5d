#include "planning/scene.hpp"

#include <algorithm>
#include <array>

#include "geometry/plane/polygon.hpp"
#include "lines/trapped_water.hpp"

namespace linewright {

namespace {

/// Fine enough for the eye, coarse enough to be small in a file.
constexpr double drawn_sagitta_in = 0.02;
/// Envelopes bow between supports: no step is longer, in inches and as a share of its span.
constexpr double longest_step_in = 2;
constexpr int steps_of_span = 10;

void add_outline(ScenePart& part, const std::vector<Vec2>& polygon, const DrawnPlane& plane) {
  const auto placed = [&](Vec2 at) { return plane.in_space(at); };
  for (std::size_t i = 0; i < polygon.size(); ++i)
    part.edges.push_back({placed(polygon[i]), placed(polygon[(i + 1) % polygon.size()])});
}

/// A thin web is drawn as its middle plane.
void draw_frame(ScenePart& part, const Frame& frame) {
  std::vector<std::vector<Vec2>> holes;
  for (const Hole& hole : frame.holes) holes.push_back(edge_polygon(hole, drawn_sagitta_in));
  for (const auto& [a, b, c] : triangulate(frame.outline, holes))
    part.faces.push_back({frame.plane.in_space({a.u, a.v}), frame.plane.in_space({b.u, b.v}),
                          frame.plane.in_space({c.u, c.v})});
  add_outline(part, frame.outline, frame.plane);
  for (const std::vector<Vec2>& hole : holes) add_outline(part, hole, frame.plane);
}

void draw_box(ScenePart& part, const Box& box) {
  const auto corner = [&](unsigned bits) {
    return Vec3{bits & 1u ? box.max.x : box.min.x, bits & 2u ? box.max.y : box.min.y,
                bits & 4u ? box.max.z : box.min.z};
  };
  constexpr std::array<std::array<unsigned, 4>, 6> sides{
      {{0, 1, 3, 2}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 3, 7, 6}, {0, 2, 6, 4}, {1, 3, 7, 5}}};
  for (const auto& [a, b, c, d] : sides) {
    part.faces.push_back({corner(a), corner(b), corner(c)});
    part.faces.push_back({corner(a), corner(c), corner(d)});
  }
  for (unsigned from = 0; from < 8; ++from)
    for (const unsigned axis : {1u, 2u, 4u})
      if (!(from & axis)) part.edges.push_back({corner(from), corner(from | axis)});
}

/// Two directions square to `along` and to each other.
std::array<Vec3, 2> across(Vec3 along) {
  const Vec3 off = std::abs(along.x) < 0.7 * norm(along) ? Vec3{1, 0, 0} : Vec3{0, 1, 0};
  const Vec3 first = unit(cross(along, off));
  return {first, unit(cross(along, first))};
}

void draw_cylinder(ScenePart& part, Vec3 from, Vec3 to, double radius_in) {
  if (distance(from, to) == 0) return;
  const auto [first, second] = across(to - from);
  constexpr int sides = 20;
  const auto rim = [&, u = first, v = second](int i) {
    const double angle = 2 * 3.14159265358979323846 * (i % sides) / sides;
    return (u * std::cos(angle) + v * std::sin(angle)) * radius_in;
  };
  for (int i = 0; i < sides; ++i) {
    const Vec3 here = rim(i);
    const Vec3 next = rim(i + 1);
    part.faces.push_back({from + here, from + next, to + next});
    part.faces.push_back({from + here, to + next, to + here});
    for (const Vec3 end : {from, to}) {
      part.faces.push_back({end, end + here, end + next});
      part.edges.push_back({end + here, end + next});
    }
  }
}

void draw_solid(ScenePart& part, const Solid& solid) {
  if (const Box* box = std::get_if<Box>(&solid.shape)) return draw_box(part, *box);
  const Cylinder& cylinder = std::get<Cylinder>(solid.shape);
  draw_cylinder(part, cylinder.from, cylinder.to, cylinder.diameter_in / 2);
}

void draw_channel(ScenePart& part, const Obstacles& obstacles, int index) {
  for (const Obstacle& each : obstacles.of_part(index)) {
    if (each.is_segment)
      part.edges.push_back({each.shape.a, each.shape.b});
    else if (each.feature == Feature::face)
      part.faces.push_back(each.shape);
  }
}

void add_border(ScenePart& part, const std::vector<Vec3>& corners) {
  for (std::size_t i = 0; i < corners.size(); ++i)
    part.edges.push_back({corners[i], corners[(i + 1) % corners.size()]});
}

void draw_panel(ScenePart& part, const Panel& panel, const Obstacles& obstacles, int index) {
  for (const Obstacle& each : obstacles.of_part(index))
    if (!each.is_segment && each.feature == Feature::face) part.faces.push_back(each.shape);
  add_border(part, panel.corners);
  for (const std::vector<Vec3>& bay : panel.bays) add_border(part, bay);
}

void draw_mesh(ScenePart& part, const MeshField& field) {
  if (!field.all_within()) return;
  std::vector<Triangle3> faces;
  field.visit_triangles(field.cells_near(field.bounds(), 0),
                        [&](const Triangle3& face) { faces.push_back(face); });
  const std::size_t step = (faces.size() + most_mesh_faces - 1) / most_mesh_faces;
  for (std::size_t i = 0; i < faces.size(); i += std::max<std::size_t>(1, step))
    part.faces.push_back(faces[i]);
  part.faces_left_out = faces.size() - part.faces.size();
}

template <typename Item>
const Item* named(const std::vector<Item>& items, const std::string& name) {
  for (const Item& item : items)
    if (item.name == name) return &item;
  return nullptr;
}

void draw(ScenePart& part, const PreparedProject& prepared, int index) {
  const Structure& structure = prepared.project->structure;
  switch (part.kind) {
    case PartKind::frame:
      if (const Frame* frame = named(structure.frames, part.name)) draw_frame(part, *frame);
      break;
    case PartKind::channel:
      draw_channel(part, prepared.obstacles, index);
      break;
    case PartKind::panel:
      if (const Panel* panel = named(structure.panels, part.name))
        draw_panel(part, *panel, prepared.obstacles, index);
      break;
    case PartKind::solid:
      if (const Solid* solid = named(structure.solids, part.name)) draw_solid(part, *solid);
      break;
    case PartKind::mesh:
      for (const MeshPartField& mesh : prepared.obstacles.meshes())
        if (mesh.part == index) draw_mesh(part, *mesh.field);
      break;
    case PartKind::fitting:
      if (const NodeFitting* fitting = prepared.fitting_of(index))
        for (const Segment3& leg : fitting->legs)
          draw_cylinder(part, leg.a, leg.b, fitting->body.radius_in);
      break;
    case PartKind::pulley:
      if (const RoutePulley* pulley = prepared.pulley_of(index)) {
        const Vec3 half = pulley->body.axis * (pulley->body.width_in / 2);
        draw_cylinder(part, pulley->body.centre - half, pulley->body.centre + half,
                      pulley->body.rim_radius_in);
      }
      break;
    case PartKind::mover:
      break;
  }
}

/// Where steps are wanted: along arcs as finely as they bend, and where spans begin and end.
std::vector<double> step_places(const PreparedRoute& route) {
  std::vector<double> places{0, route.length_in()};
  for (const PathChord& chord : route.centreline.chords(0, route.length_in(), drawn_sagitta_in))
    places.push_back(chord.start_in);
  for (const Span& span : route.spans) {
    const int long_enough = static_cast<int>(std::ceil(span.length_in() / longest_step_in));
    const int steps = std::max(steps_of_span, long_enough);
    for (int i = 0; i < steps; ++i) places.push_back(span.start_in + span.length_in() * i / steps);
  }
  for (const Sleeve& sleeve : route.route->sleeves) {
    places.push_back(sleeve.from_in);
    places.push_back(sleeve.to_in);
  }
  std::sort(places.begin(), places.end());
  std::erase_if(places, [&](double at) { return at < 0 || at > route.length_in(); });
  constexpr double one_place_in = 1e-6;
  places.erase(std::unique(places.begin(), places.end(),
                           [](double a, double b) { return b - a < one_place_in; }),
               places.end());
  return places;
}

/// The reach that covers a place: of a span, or of a whole rod.
const SpanReach* reach_at(const std::vector<SpanReach>& reaches, double distance_in) {
  for (const SpanReach& reach : reaches)
    if (distance_in >= reach.stretch.start_in && distance_in <= reach.stretch.end_in) return &reach;
  return nullptr;
}

SceneRoute drawn(const PreparedRoute& route, const std::vector<SpanReach>& reaches) {
  SceneRoute scene{route.route->name,
                   route.route->system_name,
                   route.route->system,
                   {},
                   {},
                   route.route->attached,
                   route.moves};
  for (const double at : step_places(route)) scene.steps.push_back(step_at(route, reaches, at));
  for (const Support& support : route.supports)
    scene.supports.push_back(
        {support.name, support.distance_in, route.centreline.at(support.distance_in)});
  return scene;
}

void add_pools(Scene& scene, const PreparedProject& prepared) {
  const std::vector<AirNetwork> networks = air_networks(prepared);
  for (const Attitude& attitude : prepared.project->attitudes) {
    scene.attitudes.push_back(attitude.name);
    for (const AirNetwork& network : networks)
      for (const WaterTrap& trap : water_traps(network, attitude))
        for (const WetStretch& wet : trap.wet)
          scene.pools.push_back({attitude.name, wet.route->route->name, wet.from_in, wet.to_in});
  }
}

}  // namespace

SceneStep step_at(const PreparedRoute& route, const std::vector<SpanReach>& reaches,
                  double distance_in) {
  SceneStep step{
      distance_in, route.centreline.at(distance_in), route.radius_in(distance_in), {}, {}};
  const SpanReach* reach = reach_at(reaches, distance_in);
  if (reach && reach->missing.empty()) {
    step.likely_in = reach->stretch.envelope.width_in(Reach::likely, distance_in);
    step.bound_in = reach->stretch.envelope.width_in(Reach::bound, distance_in);
  }
  return step;
}

Scene scene_of(const PreparedProject& prepared, const LineMotion& motion) {
  Scene scene;
  const std::vector<Part>& parts = prepared.obstacles.parts();
  for (std::size_t i = 0; i < parts.size(); ++i) {
    ScenePart part{parts[i].kind, parts[i].name, {}, {}, 0};
    draw(part, prepared, static_cast<int>(i));
    if (!part.faces.empty() || !part.edges.empty()) scene.parts.push_back(std::move(part));
  }
  for (const Mover& mover : prepared.project->structure.movers)
    scene.movers.push_back({mover.name, mover.pivot, mover.axis, mover.points, mover.radius_in,
                            mover.sweep_from_deg, mover.sweep_to_deg});
  for (std::size_t i = 0; i < prepared.routes.size(); ++i)
    scene.routes.push_back(drawn(prepared.routes[i], motion.reaches[i]));
  add_pools(scene, prepared);
  return scene;
}

}  // namespace linewright
