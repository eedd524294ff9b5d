#include "input/route_reader.hpp"

#include <fmt/format.h>

#include "input/control_cable_reader.hpp"
#include "input/route_point_reader.hpp"

namespace linewright {

namespace {

constexpr std::array system_kinds{Choice<SystemKind>{"static", SystemKind::static_air},
                                  Choice<SystemKind>{"pitot", SystemKind::pitot},
                                  Choice<SystemKind>{"alpha", SystemKind::alpha},
                                  Choice<SystemKind>{"vent", SystemKind::vent},
                                  Choice<SystemKind>{"cable", SystemKind::cable},
                                  Choice<SystemKind>{"wire", SystemKind::wire}};

constexpr NumberSpec diameter{"a diameter"};
constexpr NumberSpec bore{"a bore"};
constexpr NumberSpec distance_along{"a distance along the line", Dimension::length,
                                    Sign::not_negative};
constexpr NumberSpec force{"a tension", Dimension::force, Sign::positive, 1e6, "lbf"};
constexpr NumberSpec travel{"a travel", Dimension::length, Sign::not_negative};

std::string without_blanks(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return std::string(text.substr(first, text.find_last_not_of(" \t") - first + 1));
}

/// A system as the file writes it: its kind, and its name where there are two of a kind.
struct WrittenSystem {
  std::string kind;
  std::string name;
  bool named = false;
};

WrittenSystem split_system(std::string_view text) {
  const std::size_t colon = text.find(':');
  if (colon == std::string_view::npos) return {without_blanks(text), {}, false};
  return {without_blanks(text.substr(0, colon)), without_blanks(text.substr(colon + 1)), true};
}

/// `static`, `"static: alternate"` or the same without quotes, which YAML reads as a map.
WrittenSystem written_system(const YamlNode& node, ReadContext& context) {
  if (node.kind == YamlNode::Kind::map && node.entries.size() == 1) {
    const YamlEntry& entry = node.entries.front();
    return {entry.key, read_text(entry.value, "the name of a system", context), true};
  }
  return split_system(read_text(node, "a system", context));
}

void read_system(FieldReader& fields, Route& route, ReadContext& context) {
  const YamlNode* node = fields.require("system");
  if (node == nullptr) return;
  const WrittenSystem written = written_system(*node, context);
  if (written.kind.empty() && !written.named) return;
  YamlNode kind;
  kind.kind = YamlNode::Kind::scalar;
  kind.text = written.kind;
  kind.where = node->where;
  std::vector<std::string> known;
  for (const auto& choice : system_kinds) known.emplace_back(choice.word);
  const auto index = read_word(kind, "the kind of a system", known, context);
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
  FieldReader fields(node, "a sleeve", context,
                     {"from", "to", "line", "bore", "outside", "minimum_bend_radius"});
  Sleeve sleeve;
  sleeve.where = node.where;
  sleeve.line = fields.optional_use_name("line", Named::line);
  sleeve.from_in = fields.number("from", distance_along);
  sleeve.to_in = fields.number("to", distance_along);
  sleeve.bore_in = fields.optional_number("bore", bore);
  sleeve.outside_in = fields.optional_number("outside", {"an outside diameter"});
  if (const auto radius = fields.optional_number("minimum_bend_radius", {"a bend radius"}))
    sleeve.minimum_bend_radius_in = {*radius, {"stated for the sleeve", Mark::builder}};
  for (const char* key : {"bore", "outside", "minimum_bend_radius"})
    if (fields.has("line") && fields.has(key))
      context.error(fields.where_of(key),
                    fmt::format("the sleeve's 'line' says its '{}': leave one of them out", key));
  if (sleeve.from_in >= sleeve.to_in)
    context.error(fields.where_of("to"), "a sleeve must end beyond where it starts");
  if (sleeve.bore_in && sleeve.outside_in && *sleeve.bore_in >= *sleeve.outside_in)
    context.error(fields.where_of("bore"),
                  "the bore of a sleeve must be smaller than its outside diameter");
  return sleeve;
}

Attachment read_attachment(const YamlNode& node, ReadContext& context) {
  FieldReader fields(node, "an attachment", context,
                     {"kind", "at", "length", "diameter", "adjustment", "ends"});
  Attachment attachment;
  attachment.where = node.where;
  attachment.kind = fields.text("kind", "the kind of an attachment");
  attachment.at_in = fields.number("at", distance_along);
  attachment.length_in = fields.number("length", {"a length"});
  attachment.diameter_in = fields.number("diameter", diameter);
  read_turnbuckle(fields, attachment, context);
  return attachment;
}

Tension read_tension(const YamlNode& node, ReadContext& context) {
  FieldReader fields(node, "a tension", context, {"rigged", "limit_load"});
  Tension tension;
  tension.where = node.where;
  tension.rigged_lbf = fields.number("rigged", force);
  tension.limit_load_lbf = fields.optional_number("limit_load", force);
  refuse_tiny_force(fields, "rigged", "a tension", tension.rigged_lbf, context);
  refuse_tiny_force(fields, "limit_load", "a tension", tension.limit_load_lbf, context);
  return tension;
}

Travel read_travel(const YamlNode& node, ReadContext& context) {
  FieldReader fields(node, "a travel", context, {"forward", "aft"});
  Travel read;
  read.where = node.where;
  read.forward_in = fields.number("forward", travel);
  read.aft_in = fields.number("aft", travel);
  return read;
}

/// A control's name without outer blanks, as the first route that names it writes it.
std::string read_control_name(FieldReader& fields, const ReadContext& context) {
  const std::string name = without_blanks(fields.optional_text("control", "a control"));
  for (const Route& before : context.draft.project.routes)
    if (is_same_control(before.control, name)) return before.control;
  return name;
}

void read_control(FieldReader& fields, Route& route, ReadContext& context) {
  route.control = read_control_name(fields, context);
  route.primary = fields.optional_flag("primary").value_or(!is_same_control(route.control, "trim"));
  if (const YamlNode* tension = fields.find("tension"))
    route.tension = read_tension(*tension, context);
  if (const YamlNode* node = fields.find("travel")) route.travel = read_travel(*node, context);
  read_control_cable(fields, route, context);
  if (route.system_name.empty() || route.system == SystemKind::cable) return;
  for (const char* key : {"control", "primary", "tension", "travel", "ends", "lever_ratio",
                          "pilot_force", "airframe_stiffness"})
    if (fields.has(key))
      context.error(fields.where_of(key),
                    fmt::format("'{}' belongs to a route of system cable", key));
}

}  // namespace

void read_route(const YamlNode& node, ReadContext& context) {
  FieldReader fields(node, "a route", context,
                     {"name", "system", "control", "primary", "line", "from", "to", "length",
                      "tension", "travel", "ends", "lever_ratio", "pilot_force",
                      "airframe_stiffness", "points", "sleeves", "attached"});
  Route route;
  route.where = node.where;
  route.name = fields.give_name(Named::route);
  read_system(fields, route, context);
  route.line = fields.use_name("line", Named::line);
  route.line_where = fields.where_of("line");
  route.from = fields.use_name("from", Named::node);
  route.from_where = fields.where_of("from");
  route.to = fields.use_name("to", Named::node);
  route.to_where = fields.where_of("to");
  route.length_in = fields.optional_number("length", {"a length"});
  read_control(fields, route, context);
  for (const YamlNode& item : fields.items("points")) read_route_point(item, route, context);
  for (const YamlNode& item : fields.items("sleeves"))
    route.sleeves.push_back(read_sleeve(item, context));
  for (const YamlNode& item : fields.items("attached"))
    route.attached.push_back(read_attachment(item, context));
  context.draft.project.routes.push_back(std::move(route));
}

}  // namespace linewright
