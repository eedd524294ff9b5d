#include "input/derive/derivation.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

#include "input/derive/derived_nodes.hpp"
#include "input/derive/end_ports.hpp"
#include "input/derive/frame_plane.hpp"
#include "input/derive/quiet_values.hpp"
#include "input/derive/route_places.hpp"
#include "input/derive/surface_choice.hpp"
#include "input/field_values.hpp"
#include "input/field_words.hpp"
#include "input/fitting_entry.hpp"
#include "input/keys/network_keys.hpp"
#include "input/keys/structure_keys.hpp"

namespace linewright {

namespace {

/// Middle of the area of a polygon.
Vec2 middle_of(const std::vector<Vec2>& corners) {
  double twice_area = 0;
  Vec2 sum;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Vec2 a = corners[i];
    const Vec2 b = corners[(i + 1) % corners.size()];
    const double part = a.u * b.v - b.u * a.v;
    twice_area += part;
    sum = {sum.u + (a.u + b.u) * part, sum.v + (a.v + b.v) * part};
  }
  return twice_area == 0 ? corners.front()
                         : Vec2{sum.u / (3 * twice_area), sum.v / (3 * twice_area)};
}

/// True for what someone may have meant for a number.
bool starts_as_number(std::string_view text) {
  return text.empty() || std::string_view("0123456789+-.").find(text.front()) != text.npos;
}

}  // namespace

Derivation::Derivation(std::vector<ParsedFile>& files, ProjectDraft& draft)
    : draft_(draft), items_(files) {}

void Derivation::run() {
  for (ProjectItem& item : items_.all()) work_out(item);
  for (ProjectItem& item : items_.all())
    if (item.map->find("mirror") != nullptr) remove_key(*item.node, "mirror");
  note_ports();
  items_.insert_twins();
}

bool Derivation::work_out(ProjectItem& item) {
  if (item.progress == Progress::done) return true;
  if (item.progress == Progress::working) {
    report_circle(item);
    return false;
  }
  item.progress = Progress::working;
  working_.push_back(&item);
  if (item.is_twin)
    work_out_twin(item);
  else if (item.node->kind == YamlNode::Kind::map)
    work_out_itself(item);
  working_.pop_back();
  item.progress = Progress::done;
  return true;
}

void Derivation::work_out_itself(ProjectItem& item) {
  if (const YamlNode* mirror = item.node->find("mirror");
      mirror != nullptr && item.twin == nullptr && item.map->find("mirror") != nullptr)
    error(mirror->where, "'mirror' must be the name of the twin");
  if (item.kind == Named::node) place_node_item(item);
  if (item.kind == Named::hole) place_hole(item);
  if (item.map == &mover_map) place_pins(item);
  if (item.kind == Named::node) place_arm(item.node->find("arm"), item.bare);
  if (item.kind != Named::route) return;
  if (YamlNode* run_out = item.node->find("run_out"))
    for (const std::string_view end : {"from_arm", "to_arm"})
      place_arm(run_out->find(end), item.bare);
  place_points(item, *this);
}

void Derivation::report_circle(const ProjectItem& item) {
  const auto first = std::find(working_.begin(), working_.end(), &item);
  std::string words = named_item(item);
  for (auto each = first + 1; each != working_.end(); ++each)
    words += fmt::format(" takes its place from {}, which", named_item(**each));
  error(item.node->where, words + fmt::format(" takes it from {}", named_item(item)),
        "give one of them its place");
}

void Derivation::place_node_item(ProjectItem& item) {
  YamlNode& node = *item.node;
  const bool by_reference = is_placed_by_reference(node) || node.find("through") != nullptr;
  const YamlNode* at = node.find("at");
  if (at != nullptr && by_reference)
    error(at->where, "'at' says where the node is, and another key says so, too",
          "leave one of them out");
  const YamlNode* through = node.find("through");
  const bool twice = at == nullptr && through != nullptr && is_placed_by_reference(node);
  if (twice)
    error(through->where, "'through' says where the node is, and another key says so, too",
          "leave one of them out");
  if (at == nullptr && !by_reference && !is_misspelt(node, *item.map, "at"))
    error(node.where, "a node needs 'at'", "or what it is 'on', or the hole it goes 'through'");
  std::optional<Vec3> place;
  std::string note;
  if (at == nullptr && !twice && through != nullptr) {
    const std::string_view hole = quiet_text(node, "through");
    place = hole_at(hole);
    note = fmt::format("middle of hole {}", hole);
    if (find(Named::hole, hole) == nullptr)
      report_no_name(through->where, fmt::format("there is no hole {}", quoted_text(hole)));
  } else if (at == nullptr && !twice && by_reference) {
    place = place_on_part(node, item.bare, {}, 0.0, *this, note);
  }
  remove_references(node);
  remove_key(node, "through");
  if (at != nullptr) return;
  set_value(node, "at",
            place ? place_node(*place, node.where, item.bare, note) : unread_node(node.where));
}

void Derivation::report_no_name(const SourceLocation& where, std::string message,
                                std::string suggestion) {
  if (draft_.names_complete) error(where, std::move(message), std::move(suggestion));
}

void Derivation::report_no_part(const YamlNode& name) {
  if (name.kind == YamlNode::Kind::scalar)
    report_no_name(name.where, fmt::format("there is no part {}", quoted_text(name.text)));
  else
    error(name.where, fmt::format("expected the name of a part, found {}", found_words(name)));
}

void Derivation::place_arm(YamlNode* arm, BareLength bare) {
  const YamlNode* on = arm != nullptr ? arm->find("on") : nullptr;
  if (on == nullptr) return;
  const SourceLocation where = on->where;
  ProjectItem* mover = find(Named::part, on->text);
  if (arm->find("pivot") != nullptr || arm->find("axis") != nullptr)
    error(where, "'on' says what the arm turns about, and its 'pivot' and 'axis' do, too",
          "leave one of them out");
  else if (mover == nullptr)
    report_no_part(*on);
  else if (mover->map != &mover_map)
    error(where,
          fmt::format("{} is no mover: an arm is 'on' a part that moves", named_item(*mover)));
  // A mover that is pinned to the arm's node says by itself what it turns about.
  const bool pinned = mover != nullptr && mover->progress == Progress::working && !mover->is_twin;
  const bool known = mover != nullptr && mover->map == &mover_map && (pinned || work_out(*mover));
  remove_key(*arm, "on");
  if (arm->find("pivot") == nullptr) {
    const auto pivot = known ? quiet_place(mover->node->find("pivot"), mover->bare) : std::nullopt;
    set_value(*arm, "pivot",
              pivot ? place_node(*pivot, where, bare, fmt::format("as {}", mover->name))
                    : unread_node(where));
  }
  if (arm->find("axis") == nullptr) {
    const YamlNode* axis = known ? mover->node->find("axis") : nullptr;
    set_value(*arm, "axis", axis != nullptr ? *axis : unread_node(where));
  }
}

void Derivation::place_pins(ProjectItem& mover) {
  YamlNode* points = mover.node->find("points");
  if (points == nullptr) return;
  std::vector<std::string> nodes;
  for (YamlNode& point : points->items) {
    const bool named = point.kind == YamlNode::Kind::scalar &&
                       (find(Named::node, point.text) != nullptr || !starts_as_number(point.text));
    // What is neither a name nor a place, the readers refuse.
    if (!named) continue;
    if (find(Named::node, point.text) == nullptr)
      report_no_name(point.where,
                     fmt::format("there is no node {} for {} to be pinned to",
                                 quoted_text(point.text), named_item(mover)),
                     "give the place of this corner, or the name of a node that is there");
    const auto at = node_at(point.text);
    nodes.push_back(point.text);
    point = at ? place_node(*at, point.where, mover.bare, {}) : unread_node(point.where);
  }
  if (!nodes.empty()) points->note = fmt::format("with the place of {}", fmt::join(nodes, ", "));
}

void Derivation::place_hole(ProjectItem& item) {
  YamlNode* centre = item.node->find("centre");
  if (centre == nullptr || centre->kind != YamlNode::Kind::map) return;
  const SourceLocation where = centre->where;
  const YamlNode* on = centre->find("on");
  if (on == nullptr || centre->entries.size() != 1) {
    error(where, "expected two lengths, or {on: ROUTE}, found a map");
    *centre = unread_node(where);
    return;
  }
  ProjectItem* route = find(Named::route, on->text);
  const auto plane = frame_plane(*item.holder->node, item.bare);
  std::optional<Vec3> place;
  std::string name = on->text;
  if (route == nullptr)
    report_no_name(on->where, fmt::format("there is no route {}", quoted_text(on->text)));
  else
    place = where_route_meets(*route, *item.holder, where, *this);
  *centre = place && plane
                ? plane_point_node(plane->seen(*place), where, item.bare,
                                   fmt::format("where {} meets {}", name, item.holder->name))
                : unread_node(where);
}

std::optional<Vec3> Derivation::node_at(std::string_view name) {
  ProjectItem* item = find(Named::node, name);
  if (item == nullptr) return std::nullopt;
  // Its arm may be one of a mover that is pinned to it: its place is known by then.
  const bool placed = item->progress == Progress::working && item->node->find("at") != nullptr;
  if (!placed && !work_out(*item)) return std::nullopt;
  return quiet_place(item->node->find("at"), item->bare);
}

std::optional<Vec3> Derivation::hole_at(std::string_view name) {
  ProjectItem* item = find(Named::hole, name);
  if (item == nullptr) return std::nullopt;
  if (item->is_twin) {
    const auto other = hole_at(item->twin->name);
    return other ? std::optional(Vec3{other->x, -other->y, other->z}) : std::nullopt;
  }
  if (!work_out(*item)) return std::nullopt;
  const YamlNode& node = *item->node;
  if (item->map == &wall_hole_map) return quiet_place(node.find("at"), item->bare);
  const auto plane = frame_plane(*item->holder->node, item->bare);
  if (!plane) return std::nullopt;
  if (const auto centre = quiet_plane_point(node.find("centre"), item->bare))
    return plane->in_space(*centre);
  const auto corners = quiet_plane_points(node.find("outline"), item->bare);
  if (!corners || corners->size() < 3) return std::nullopt;
  return plane->in_space(middle_of(*corners));
}

std::optional<double> Derivation::length_in(const YamlNode& map, const KeySpec& key,
                                            BareLength bare) {
  const YamlNode* node = map.find(key.name);
  if (node == nullptr) return std::nullopt;
  ValueContext context{draft_.errors, bare};
  const double read_in = read_number(*node, key.number, context);
  return std::isfinite(read_in) ? std::optional(read_in) : std::nullopt;
}

std::optional<double> Derivation::outside_diameter_in(std::string_view line) {
  if (ProjectItem* own = find(Named::line, line)) {
    const auto outside_in = quiet_length_in(*own->node, "outside", own->bare);
    const double plus_in = quiet_length_in(*own->node, "plus_tolerance", own->bare).value_or(0);
    return outside_in ? std::optional(*outside_in + plus_in) : std::nullopt;
  }
  const Line* known = draft_.project.catalogue.find_line(line);
  return known != nullptr ? std::optional(known->largest_diameter_in()) : std::nullopt;
}

std::optional<Fitting> Derivation::fitting(std::string_view name) {
  if (const ProjectItem* own = find(Named::fitting, name)) {
    auto read = read_fitting_entry(*own->node, own->bare, false);
    return read ? std::optional(*std::move(read)) : std::nullopt;
  }
  const Fitting* known = draft_.project.catalogue.find_fitting(name);
  return known != nullptr ? std::optional(*known) : std::nullopt;
}

void Derivation::note_ports() {
  for (ProjectItem& item : items_.all()) {
    if (item.kind != Named::node || item.refused) continue;
    YamlNode* fitting = item.node->find("fitting");
    if (fitting == nullptr) continue;
    const std::vector<Port> ports = ports_of_node(item, *this);
    if (!ports.empty()) fitting->note = ports_in_words(ports);
  }
}

}  // namespace linewright
