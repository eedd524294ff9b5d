#include "input/structure_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "input/channel_check.hpp"
#include "input/frame_plane.hpp"
#include "input/keys/structure_keys.hpp"
#include "input/map_reader.hpp"
#include "input/mesh_entry.hpp"
#include "input/outline_check.hpp"
#include "input/stretched_panels.hpp"
#include "model/sheet.hpp"

namespace linewright {

namespace {

using HoleReader = MapReader<hole_map>;

/// Reports a fault of a list of corners at the corner it concerns. True when there is none. `node`
/// is the list, or nullptr.
bool accept(const std::optional<OutlineFault>& fault, const YamlNode* node, ReadContext& context) {
  if (!fault) return true;
  if (node == nullptr || node->kind != YamlNode::Kind::sequence) return false;
  const bool at_corner = fault->corner && *fault->corner < node->items.size();
  context.error(at_corner ? node->items[*fault->corner].where : node->where, fault->words);
  return false;
}

template <const MapSpec& map>
std::vector<Vec2> read_outline(MapReader<map>& fields, ReadContext& context) {
  std::vector<Vec2> outline = fields.plane_points("outline");
  // An outline that says so was completed when places were derived.
  fields.optional_flag("half");
  if (!accept(outline_fault(outline), fields.find("outline"), context)) outline.clear();
  return outline;
}

Circle read_circle(HoleReader& fields) {
  Circle circle;
  circle.centre = fields.plane_point("centre");
  circle.diameter_in = fields.number("diameter");
  return circle;
}

/// What guards the part's edge, into `thing`, with the radius of a turned edge.
template <const auto& choices, const MapSpec& map, typename Thing>
void read_edge(MapReader<map>& fields, Thing& thing, ReadContext& context) {
  if (!fields.has("edge")) ++context.draft.edges_unstated;
  thing.edge = fields.template optional_word<choices>("edge").value_or(EdgeGuard::bare);
  thing.edge_radius_in = fields.optional_number("edge_radius");
  if (thing.edge_radius_in && !is_turned(thing.edge))
    fields.refuse_keys_of("a rolled or flanged edge");
}

template <const MapSpec& map>
void check_bore(const Hole& hole, MapReader<map>& fields, ReadContext& context) {
  if (!hole.bore_in) return;
  if (hole.edge != EdgeGuard::grommet && hole.edge != EdgeGuard::bushing)
    fields.refuse_keys_of("a grommet or a bushing");
  const Circle* circle = std::get_if<Circle>(&hole.shape);
  if (circle != nullptr && *hole.bore_in >= circle->diameter_in)
    context.error(fields.where_of("bore"), "the bore must be smaller than the hole");
}

Hole read_hole(const YamlNode& node, ReadContext& context) {
  HoleReader fields(node, context);
  Hole hole;
  hole.shape = std::vector<Vec2>();
  hole.where = node.where;
  hole.name = fields.own_name(context.draft);
  const bool round = fields.has("centre") || fields.has("diameter");
  if (round && fields.has("outline"))
    context.error(fields.where_of("outline"),
                  "a hole has 'centre' and 'diameter', or an 'outline', not both");
  else if (fields.lacks("centre") && fields.lacks("diameter") && fields.lacks("outline"))
    context.error(node.where, "a hole needs 'centre' and 'diameter', or an 'outline'");
  else if (round)
    hole.shape = read_circle(fields);
  else
    hole.shape = read_outline(fields, context);
  read_edge<hole_edges>(fields, hole, context);
  hole.bore_in = fields.optional_number("bore");
  check_bore(hole, fields, context);
  return hole;
}

/// The hole's corners, or places all round a circle.
std::vector<Vec2> rim(const Hole& hole) {
  if (const auto* corners = std::get_if<std::vector<Vec2>>(&hole.shape)) return *corners;
  const Circle& circle = std::get<Circle>(hole.shape);
  std::vector<Vec2> places;
  constexpr int count = 32;
  for (int i = 0; i < count; ++i) {
    const double angle = 2 * std::numbers::pi * i / count;
    places.push_back(circle.centre +
                     Vec2{std::cos(angle), std::sin(angle)} * (circle.diameter_in / 2));
  }
  return places;
}

void check_inside(const Hole& hole, const Frame& frame, ReadContext& context) {
  if (frame.outline.empty()) return;
  for (const Vec2 place : rim(hole)) {
    if (!std::isfinite(place.u) || !std::isfinite(place.v)) return;
    if (outline_covers(frame.outline, place)) continue;
    context.error(hole.where, fmt::format("hole {} reaches outside the outline of frame {}",
                                          quoted_text(hole.name), quoted_text(frame.name)));
    return;
  }
}

/// Round holes in the walls of a channel, a panel or a box.
template <const MapSpec& map>
std::vector<WallHole> read_wall_holes(MapReader<map>& part, ReadContext& context) {
  std::vector<WallHole> holes;
  for (const YamlNode& item : part.items("holes")) {
    MapReader<wall_hole_map> fields(item, context);
    WallHole hole;
    hole.where = item.where;
    hole.name = fields.own_name(context.draft);
    hole.at = fields.place("at");
    hole.diameter_in = fields.number("diameter");
    read_edge<hole_edges>(fields, hole, context);
    hole.bore_in = fields.optional_number("bore");
    check_bore({hole.name, Circle{{}, hole.diameter_in}, hole.edge, hole.bore_in, hole.where},
               fields, context);
    holes.push_back(std::move(hole));
  }
  return holes;
}

void read_frame(const YamlNode& node, ReadContext& context) {
  MapReader<frame_map> fields(node, context);
  if (fields.may_hide_names()) context.draft.names_complete = false;
  Frame frame;
  frame.where = node.where;
  frame.name = fields.own_name(context.draft);
  frame.plane = read_frame_plane(node, fields, context);
  frame.thickness_in = fields.number("thickness");
  if (fields.require("outline") != nullptr) frame.outline = read_outline(fields, context);
  for (const YamlNode& item : fields.items("holes")) {
    frame.holes.push_back(read_hole(item, context));
    check_inside(frame.holes.back(), frame, context);
  }
  context.draft.project.structure.frames.push_back(std::move(frame));
}

void read_channel(const YamlNode& node, ReadContext& context) {
  MapReader<channel_map> fields(node, context);
  if (fields.may_hide_names()) context.draft.names_complete = false;
  Channel channel;
  channel.where = node.where;
  channel.name = fields.own_name(context.draft);
  channel.path = fields.places("path");
  const bool has_path = accept(path_fault(channel.path), fields.find("path"), context);
  channel.section = fields.plane_points("section");
  if (accept(path_fault(channel.section), fields.find("section"), context) && has_path)
    accept(fold_fault(channel), fields.find("path"), context);
  channel.thickness_in = fields.number("thickness");
  read_edge<channel_edges>(fields, channel, context);
  channel.holes = read_wall_holes(fields, context);
  context.draft.project.structure.channels.push_back(std::move(channel));
}

void read_panel(const YamlNode& node, ReadContext& context) {
  MapReader<panel_map> fields(node, context);
  if (fields.may_hide_names()) context.draft.names_complete = false;
  Panel panel;
  panel.where = node.where;
  panel.name = fields.own_name(context.draft);
  if (fields.has("over")) {
    note_stretched(fields, context);
  } else {
    panel.corners = fields.places("corners");
    accept(panel_fault(panel.corners), fields.find("corners"), context);
  }
  if (!fields.has("thickness")) ++context.draft.panels_without_thickness;
  panel.thickness_in = fields.optional_number("thickness").value_or(usual_panel_thickness_in);
  panel.closure = fields.optional_name("closure", context.draft);
  panel.holes = read_wall_holes(fields, context);
  context.draft.project.structure.panels.push_back(std::move(panel));
}

Box read_box(const YamlNode& node, ReadContext& context) {
  MapReader<box_map> fields(node, context);
  const Box box{fields.place("min"), fields.place("max")};
  if (box.min.x >= box.max.x || box.min.y >= box.max.y || box.min.z >= box.max.z)
    context.error(fields.where_of("max"), "each number of 'max' must be greater than its 'min'");
  return box;
}

Cylinder read_cylinder(const YamlNode& node, ReadContext& context) {
  MapReader<cylinder_map> fields(node, context);
  const Cylinder cylinder{fields.place("from"), fields.place("to"), fields.number("diameter")};
  if (distance(cylinder.from, cylinder.to) < smallest_length_in)
    context.error(fields.where_of("to"), "a cylinder must not end where it starts");
  return cylinder;
}

void read_solid(const YamlNode& node, ReadContext& context) {
  MapReader<solid_map> fields(node, context);
  if (fields.may_hide_names()) context.draft.names_complete = false;
  Solid solid;
  solid.where = node.where;
  solid.name = fields.own_name(context.draft);
  const YamlNode* box = fields.find("box");
  const YamlNode* cylinder = fields.find("cylinder");
  if (box != nullptr && cylinder != nullptr)
    context.error(cylinder->where, "a solid is a 'box' or a 'cylinder', not both");
  else if (box != nullptr)
    solid.shape = read_box(*box, context);
  else if (cylinder != nullptr)
    solid.shape = read_cylinder(*cylinder, context);
  else if (fields.lacks("box") && fields.lacks("cylinder"))
    context.error(node.where, "a solid needs a 'box' or a 'cylinder'");
  solid.holes = read_wall_holes(fields, context);
  if (cylinder != nullptr && fields.has("holes"))
    context.error(fields.where_of("holes"), "only a 'box' can have 'holes'");
  context.draft.project.structure.solids.push_back(std::move(solid));
}

void read_mover(const YamlNode& node, ReadContext& context) {
  MapReader<mover_map> fields(node, context);
  Mover mover;
  mover.where = node.where;
  mover.name = fields.own_name(context.draft);
  mover.pivot = fields.place("pivot");
  mover.axis = fields.direction("axis");
  mover.points = fields.places("points");
  const YamlNode* points = fields.find("points");
  if (points != nullptr && points->kind == YamlNode::Kind::sequence && points->items.empty())
    context.error(points->where, "a mover needs at least one point");
  mover.radius_in = fields.number("radius");
  const auto [from, to] = fields.pair("sweep");
  if (from >= to)
    context.error(fields.where_of("sweep"),
                  "a sweep must go from the smaller angle to the greater");
  mover.sweep_from_deg = from;
  mover.sweep_to_deg = to;
  context.draft.project.structure.movers.push_back(std::move(mover));
}

}  // namespace

void read_structure(const YamlNode& node, ReadContext& context) {
  MapReader<structure_map> fields(node, context);
  if (fields.may_hide_names()) context.draft.names_complete = false;
  for (const YamlNode& item : fields.items("frames")) read_frame(item, context);
  for (const YamlNode& item : fields.items("channels")) read_channel(item, context);
  for (const YamlNode& item : fields.items("panels")) read_panel(item, context);
  for (const YamlNode& item : fields.items("solids")) read_solid(item, context);
  for (const YamlNode& item : fields.items("movers")) read_mover(item, context);
  for (const YamlNode& item : fields.items("meshes")) read_mesh(item, context);
}

}  // namespace linewright
