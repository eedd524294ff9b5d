// What a thing's twin on the other side of BL 0 is, and what has none.

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "input/derive/derivation.hpp"
#include "input/derive/derived_nodes.hpp"
#include "input/derive/frame_plane.hpp"
#include "input/derive/mirrored.hpp"
#include "input/derive/quiet_values.hpp"
#include "input/keys/structure_keys.hpp"
#include "model/channel_axis.hpp"

namespace linewright {

namespace {

PlaneSide side_in_frame(const ProjectItem& frame) {
  const auto plane = frame_plane(*frame.node, frame.bare);
  return plane ? plane_side(*plane) : PlaneSide::neither;
}

/// Which coordinate of the map's plane points is BL.
PlaneSide stated_side(const ProjectItem& item) {
  if (item.map == &wall_hole_map) return PlaneSide::first;
  // A slanted frame's image is drawn in the image of its plane.
  if (item.map == &frame_map)
    return item.node->find("plane") != nullptr ? PlaneSide::neither : side_in_frame(item);
  if (item.map == &hole_map) return side_in_frame(*item.holder);
  const auto path = quiet_places(item.node->find("path"), item.bare);
  if (!path || path->empty()) return PlaneSide::neither;
  constexpr std::array<PlaneSide, 3> by_axis{PlaneSide::first, PlaneSide::neither,
                                             PlaneSide::second};
  return by_axis[main_axis_of(*path)];
}

/// Every BL that the map's places have.
void collect_bl(const YamlNode& node, const MapSpec& map, BareLength bare,
                std::vector<double>& all) {
  const auto add = [&](const YamlNode& place) {
    if (const auto at = quiet_place(&place, bare)) all.push_back(at->y);
  };
  for (const YamlEntry& entry : node.entries) {
    const KeySpec* key = map.find(entry.key);
    if (key == nullptr || entry.key == "holes") continue;
    if (key->kind == KeyKind::place) add(entry.value);
    if (key->kind == KeyKind::places || key->kind == KeyKind::pins)
      for (const YamlNode& place : entry.value.items) add(place);
    if (key->kind == KeyKind::map) collect_bl(entry.value, *key->map, bare, all);
  }
}

/// On which sides of BL 0 places lie; on neither they lie on it.
struct SidesTaken {
  bool left = false;
  bool right = false;

  void add(double bl_in) {
    left = left || bl_in < -on_middle_in;
    right = right || bl_in > on_middle_in;
  }
};

SidesTaken sides_taken(const std::vector<double>& all) {
  SidesTaken taken;
  for (const double bl_in : all) taken.add(bl_in);
  return taken;
}

}  // namespace

/// Whether each of the frames that a panel is stretched over has a twin: its corners are numbered
/// alike.
bool Derivation::stretched_over_twins(const ProjectItem& panel) {
  const std::vector<YamlNode>& frames = panel.node->find("over")->items;
  return std::all_of(frames.begin(), frames.end(), [&](const YamlNode& name) {
    const ProjectItem* frame = find(Named::part, name.text);
    return frame != nullptr && frame->twin != nullptr;
  });
}

bool Derivation::can_have_twin(const ProjectItem& item) {
  const YamlNode* mirror = item.node->find("mirror");
  if (mirror == nullptr) return true;
  if (item.map == &panel_map && item.node->find("over") != nullptr && !stretched_over_twins(item)) {
    error(
        mirror->where,
        fmt::format("{} is stretched over frames that are on both sides, and has no mirror image: "
                    "nothing tells which of their corners are the other side's",
                    named_item(item)),
        "describe the panel on the other side with its own 'corners'");
    return false;
  }
  if (item.map == &hole_map && item.holder->twin == nullptr &&
      stated_side(item) == PlaneSide::neither) {
    error(mirror->where,
          fmt::format("{} has no mirror image in {}, which is not the same on both sides of BL 0",
                      named_item(item), named_item(*item.holder)),
          "give the mirror image of the whole part, or describe the hole where it is");
    return false;
  }
  const std::string_view why = why_no_side(item);
  if (why.empty()) return true;
  error(mirror->where, fmt::format("{} has no twin: {}", named_item(item), why),
        item.map == &frame_map ? "leave 'mirror' out, or give it to its holes"
                               : "leave 'mirror' out");
  return false;
}

std::string_view Derivation::why_no_side(const ProjectItem& item) {
  constexpr std::string_view across = "it reaches across BL 0, and is on both sides itself";
  if (item.map == &frame_map) {
    const bool known = frame_plane(*item.node, item.bare) &&
                       quiet_plane_points(item.node->find("outline"), item.bare);
    return known && frame_crosses_middle(item) ? across : std::string_view();
  }
  if (item.kind == Named::hole) return hole_crosses_middle(item) ? across : std::string_view();
  std::vector<double> all;
  collect_bl(*item.node, *item.map, item.bare, all);
  if (item.kind == Named::route) {
    for (const std::string_view end : {"from", "to"}) {
      const auto at = node_at(quiet_text(*item.node, end));
      if (!at) return {};
      all.push_back(at->y);
    }
  }
  if (all.empty()) return {};
  const SidesTaken taken = sides_taken(all);
  if (!taken.left && !taken.right) return "it lies on BL 0";
  // A route may cross over, and its twin cross it.
  return taken.left && taken.right && item.kind != Named::route ? across : std::string_view();
}

/// False where its place is not known.
bool Derivation::hole_crosses_middle(const ProjectItem& item) {
  const double half_in = quiet_length_in(*item.node, "diameter", item.bare).value_or(0) / 2;
  if (item.map == &wall_hole_map) {
    const auto at = quiet_place(item.node->find("at"), item.bare);
    return at && std::abs(at->y) <= half_in;
  }
  const auto plane = frame_plane(*item.holder->node, item.holder->bare);
  const auto middle = hole_at(item.is_twin ? item.twin->name : item.name);
  if (!plane || !middle) return false;
  double reach_in = half_in;
  if (const auto corners = quiet_plane_points(item.node->find("outline"), item.bare))
    for (const Vec2 corner : *corners)
      if (plane->in_space(corner).y * middle->y < 0) reach_in = std::abs(middle->y);
  return std::abs(middle->y) <= reach_in;
}

/// A rib lies on the side of its buttock line, any other frame on that of all its corners.
bool Derivation::frame_crosses_middle(const ProjectItem& frame) {
  const auto plane = frame_plane(*frame.node, frame.bare);
  const auto corners = quiet_plane_points(frame.node->find("outline"), frame.bare);
  if (!plane || !corners) return true;
  SidesTaken taken;
  for (const Vec2 corner : *corners) taken.add(plane->in_space(corner).y);
  return taken.left == taken.right;
}

bool Derivation::lies_on_both_sides(ProjectItem& item) {
  if (item.map == &mesh_map) return true;
  if (item.map == &frame_map) return frame_crosses_middle(item);
  if (item.kind == Named::hole) {
    const bool in_wall = item.map == &wall_hole_map;
    if (!in_wall && (!frame_plane(*item.holder->node, item.holder->bare) || !hole_at(item.name)))
      return true;
    return hole_crosses_middle(item);
  }
  if (!work_out(item)) return true;
  std::vector<double> all;
  collect_bl(*item.node, *item.map, item.bare, all);
  if (all.empty()) return true;
  const SidesTaken taken = sides_taken(all);
  return taken.left == taken.right;
}

std::string Derivation::twin_name(ProjectItem& item, Named kind, const YamlNode& name) {
  if (kind == Named::line || kind == Named::closure || kind == Named::fitting) return name.text;
  ProjectItem* there = find(kind, name.text);
  // Of a name that is nowhere, the readers say so.
  if (there == nullptr) return name.text;
  if (there->twin != nullptr) return there->twin->name;
  if (lies_on_both_sides(*there)) return name.text;
  item.refused = true;
  if (there->no_twin_said) return name.text;
  there->no_twin_said = true;
  const YamlNode& mirror = *item.twin->node->find("mirror");
  error(mirror.where,
        fmt::format("{} has no mirror image: {} lies on one side and has no twin",
                    named_item(*item.twin), named_item(*there)),
        there->map->find("mirror") != nullptr
            ? fmt::format("give {} 'mirror: NAME', in place of what stands there for its twin, if "
                          "anything does",
                          quoted_text(there->name))
            : "describe the mirrored route by itself");
  return name.text;
}

void Derivation::work_out_twin(ProjectItem& item) {
  ProjectItem& other = *item.twin;
  if (!work_out(other) || other.node->kind != YamlNode::Kind::map) return;
  if (item.kind == Named::hole && item.holder != other.holder) return;
  if (!can_have_twin(other)) {
    item.refused = true;
    draft_.names_complete = false;
    return;
  }
  for (ProjectItem& hole : items_.all())
    if (hole.holder == &other && !hole.is_twin) work_out(hole);
  *item.node =
      mirrored(*other.node, *other.map, stated_side(other),
               [&](Named kind, const YamlNode& name) { return twin_name(item, kind, name); });
  item.node->note = fmt::format("mirror image of {}", other.name);
  const YamlNode* mirror = other.node->find("mirror");
  draft_.twins.push_back(
      {item.name, other.name, mirror != nullptr ? mirror->where : SourceLocation{}});
  // Its name is then nowhere, for the one reason that is reported.
  if (item.refused) draft_.names_complete = false;
}

}  // namespace linewright
