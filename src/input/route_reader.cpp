#include "input/route_reader.hpp"

#include <fmt/format.h>

#include <array>

#include "input/blanks.hpp"
#include "input/control_cable_reader.hpp"
#include "input/keys/route_keys.hpp"
#include "input/map_reader.hpp"
#include "input/route_point_reader.hpp"

namespace linewright {

namespace {

/// A system as the file writes it: its kind, and its name where there are two of a kind.
struct WrittenSystem {
  std::string kind;
  std::string name;
  bool named = false;
};

WrittenSystem split_system(std::string_view text) {
  const std::size_t colon = text.find(':');
  if (colon == std::string_view::npos) return {std::string(without_blanks(text)), {}, false};
  return {std::string(without_blanks(text.substr(0, colon))),
          std::string(without_blanks(text.substr(colon + 1))), true};
}

/// `static`, `"static: alternate"` or the same without quotes, which YAML reads as a map.
WrittenSystem written_system(const YamlNode& node, ReadContext& context) {
  if (node.kind == YamlNode::Kind::map && node.entries.size() == 1) {
    const YamlEntry& entry = node.entries.front();
    return {entry.key, read_text(entry.value, "the name of a system", context), true};
  }
  return split_system(read_text(node, "a system", context));
}

using RouteReader = MapReader<route_map>;
using SleeveReader = MapReader<sleeve_map>;

constexpr RouteReader::Key system_row("system");

void read_system(RouteReader& fields, Route& route, ReadContext& context) {
  const YamlNode* node = fields.require("system");
  if (node == nullptr) return;
  const WrittenSystem written = written_system(*node, context);
  if (written.kind.empty() && !written.named) return;
  YamlNode kind;
  kind.kind = YamlNode::Kind::scalar;
  kind.text = written.kind;
  kind.where = node->where;
  const auto index = read_word(kind, system_row->words, system_row->choices, context);
  if (!index) return;
  if (written.named && written.name.empty()) {
    if (node->kind == YamlNode::Kind::scalar)
      context.error(node->where, "the name of a system must not be empty");
    return;
  }
  route.system = system_kinds[*index].value;
  route.system_name = written.named ? written.kind + ": " + written.name : written.kind;
}

Sleeve read_sleeve(const YamlNode& node, ReadContext& context) {
  SleeveReader fields(node, context);
  Sleeve sleeve;
  sleeve.where = node.where;
  sleeve.line = fields.optional_name("line", context.draft);
  sleeve.from_in = fields.number("from");
  sleeve.to_in = fields.number("to");
  sleeve.bore_in = fields.optional_number("bore");
  sleeve.outside_in = fields.optional_number("outside");
  if (const auto radius = fields.optional_number("minimum_bend_radius"))
    sleeve.minimum_bend_radius_in = {*radius, {"stated for the sleeve", Mark::builder}};
  static constexpr std::array<SleeveReader::Key, 3> of_the_line{"bore", "outside",
                                                                "minimum_bend_radius"};
  for (const SleeveReader::Key& key : of_the_line)
    if (fields.has("line") && fields.has(key))
      context.error(
          fields.where_of(key),
          fmt::format("the sleeve's 'line' says its '{}': leave one of them out", key->name));
  if (sleeve.from_in >= sleeve.to_in)
    context.error(fields.where_of("to"), "a sleeve must end beyond where it starts");
  if (sleeve.bore_in && sleeve.outside_in && *sleeve.bore_in >= *sleeve.outside_in)
    context.error(fields.where_of("bore"),
                  "the bore of a sleeve must be smaller than its outside diameter");
  return sleeve;
}

Attachment read_attachment(const YamlNode& node, ReadContext& context) {
  MapReader<attachment_map> fields(node, context);
  Attachment attachment;
  attachment.where = node.where;
  attachment.kind = fields.text("kind");
  attachment.at_in = fields.number("at");
  attachment.length_in = fields.number("length");
  attachment.diameter_in = fields.number("diameter");
  read_turnbuckle(fields, attachment, context);
  return attachment;
}

Tension read_tension(const YamlNode& node, ReadContext& context) {
  MapReader<tension_map> fields(node, context);
  Tension tension;
  tension.where = node.where;
  tension.rigged_lbf = fields.number("rigged");
  tension.limit_load_lbf = fields.optional_number("limit_load");
  return tension;
}

Travel read_travel(const YamlNode& node, ReadContext& context) {
  MapReader<travel_map> fields(node, context);
  Travel read;
  read.where = node.where;
  read.forward_in = fields.number("forward");
  read.aft_in = fields.number("aft");
  return read;
}

/// Whether it has a length depends on where the casing's end points.
std::optional<Arm> read_pin_arm(const YamlNode* node, ReadContext& context) {
  if (node == nullptr) return std::nullopt;
  MapReader<arm_map> fields(*node, context);
  Arm arm;
  arm.pivot = fields.place("pivot");
  arm.axis = fields.direction("axis");
  return arm;
}

RunOut read_run_out(const YamlNode& node, ReadContext& context) {
  MapReader<run_out_map> fields(node, context);
  RunOut read;
  read.where = node.where;
  read.from_in = fields.number("from");
  read.to_in = fields.number("to");
  read.from_arm = read_pin_arm(fields.find("from_arm"), context);
  read.to_arm = read_pin_arm(fields.find("to_arm"), context);
  read.swivel_deg = fields.optional_number("swivel");
  return read;
}

/// A control's name without outer blanks, as the first route that names it writes it.
std::string read_control_name(RouteReader& fields, const ReadContext& context) {
  const std::string control = fields.optional_text("control");
  const std::string name(without_blanks(control));
  for (const Route& before : context.draft.project.routes)
    if (is_same_control(before.control, name)) return before.control;
  return name;
}

void read_control(RouteReader& fields, Route& route, ReadContext& context) {
  route.control = read_control_name(fields, context);
  route.primary = fields.optional_flag("primary").value_or(!is_same_control(route.control, "trim"));
  if (const YamlNode* tension = fields.find("tension"))
    route.tension = read_tension(*tension, context);
  if (const YamlNode* node = fields.find("travel")) route.travel = read_travel(*node, context);
  route.rod_end_angle_deg = fields.optional_number("rod_end_angle");
  if (const YamlNode* node = fields.find("run_out")) route.run_out = read_run_out(*node, context);
  read_control_cable(fields, route, context);
  route.tied = fields.optional_flag("tied");
  if (route.system_name.empty()) return;
  const bool cable = route.system == SystemKind::cable;
  const bool rod = route.system == SystemKind::rod;
  if (!cable) fields.refuse_keys_of(cable_route);
  const bool push_pull = route.system == SystemKind::push_pull;
  if (!cable && !rod && !push_pull) fields.refuse_keys_of(control_route);
  if (!push_pull) fields.refuse_keys_of(push_pull_route);
  if (!rod) fields.refuse_keys_of(rod_route);
  if (!is_air(route.system)) fields.refuse_keys_of(tube_route);
  if (rod) fields.refuse_keys_of(bendable_route);
  if (cable || rod) fields.refuse_keys_of(clamped_route);
  if (route.system != SystemKind::wire) fields.refuse_keys_of(wire_route);
}

void read_support_part(const YamlNode& item, Route& route, ReadContext& context) {
  std::string name = read_text(item, "the name of a part", context);
  if (name.empty()) return;
  context.draft.used.push_back({Named::part, name, item.where});
  route.supports_on.push_back(std::move(name));
}

}  // namespace

void read_route(const YamlNode& node, ReadContext& context) {
  RouteReader fields(node, context);
  Route route;
  route.where = node.where;
  route.name = fields.own_name(context.draft);
  read_system(fields, route, context);
  route.line = fields.name("line", context.draft);
  route.line_where = fields.where_of("line");
  route.from = fields.name("from", context.draft);
  route.from_where = fields.where_of("from");
  route.to = fields.name("to", context.draft);
  route.to_where = fields.where_of("to");
  route.from_port = fields.optional_text("from_port");
  route.from_port_where = fields.where_of("from_port");
  route.to_port = fields.optional_text("to_port");
  route.to_port_where = fields.where_of("to_port");
  route.length_in = fields.optional_number("length");
  read_control(fields, route, context);
  for (const YamlNode& item : fields.items("points")) read_route_point(item, route, context);
  for (const YamlNode& item : fields.items("supports_on")) read_support_part(item, route, context);
  route.in_millimetres = context.bare == BareLength::millimetre;
  for (const YamlNode& item : fields.items("sleeves"))
    route.sleeves.push_back(read_sleeve(item, context));
  for (const YamlNode& item : fields.items("attached"))
    route.attached.push_back(read_attachment(item, context));
  context.draft.project.routes.push_back(std::move(route));
}

}  // namespace linewright
