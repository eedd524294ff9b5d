#include "input/network_reader.hpp"

#include "input/derive/quiet_values.hpp"
#include "input/keys/network_keys.hpp"
#include "input/map_reader.hpp"

namespace linewright {

namespace {

Arm read_arm(const YamlNode& node, Vec3 at, ReadContext& context) {
  MapReader<arm_map> fields(node, context);
  Arm arm;
  arm.pivot = fields.place("pivot");
  arm.axis = fields.direction("axis");
  const double length = norm(cross(at - arm.pivot, arm.axis)) / norm(arm.axis);
  if (length < smallest_length_in)
    context.error(node.where, "the arm has no length: the node lies on its axis");
  return arm;
}

Sector read_sector(const YamlNode& node, ReadContext& context) {
  MapReader<sector_map> fields(node, context);
  Sector sector;
  sector.radius_in = fields.number("radius");
  sector.wrap_deg = fields.optional_number("wrap");
  return sector;
}

LooseEnd read_loose_end(const YamlNode& node, ReadContext& context) {
  MapReader<loose_end_map> fields(node, context);
  LooseEnd loose;
  loose.where = node.where;
  loose.until = fields.name("until", context.draft);
  loose.coil_in = fields.optional_number("coil").value_or(0);
  return loose;
}

void read_port(const YamlEntry& entry, Node& node, ReadContext& context) {
  MapReader<port_map> fields(entry.value, context);
  Port port;
  port.name = entry.key;
  port.where = entry.key_where;
  port.at = fields.place("at");
  port.direction = unit(fields.direction("direction"));
  port.insertion_in = fields.optional_number("insertion").value_or(0);
  node.ports.push_back(std::move(port));
}

/// The ports of a fitting follow when all fittings are known: see input/node_ports.
void read_ports(MapReader<node_map>& fields, Node& node, ReadContext& context) {
  node.fitting = fields.optional_name("fitting", context.draft);
  const auto direction = fields.optional_direction("direction");
  const auto branch = fields.optional_direction("branch");
  const YamlNode* ports = fields.find("ports");
  if (!fields.has("fitting")) fields.refuse_keys_of(node_with_fitting);
  if (ports == nullptr) fields.refuse_keys_of(node_with_ports);
  if (fields.has("fitting")) {
    if (ports != nullptr)
      context.error(fields.where_of("ports"),
                    "the node's 'fitting' says where its ports are: leave one of them out");
    context.draft.aimed_fittings.push_back({context.draft.project.nodes.size(), direction, branch,
                                            fields.where_of("fitting"), fields.where_of("branch")});
    return;
  }
  if (ports == nullptr) return;
  if (ports->kind != YamlNode::Kind::map || ports->entries.empty())
    return context.error(ports->where, "ports must be a map of ports, each under its name",
                         "ports: {a: {at: [214, 0, 21], direction: [0, 0, 1]}}");
  for (const YamlEntry& entry : ports->entries) read_port(entry, node, context);
  if (const auto diameter = fields.optional_number("body_diameter"))
    node.body = FittingBody{*diameter / 2, 0};
}

/// Bare volumes are the cube of bare lengths, which a builder may not have meant: 6 mL, not 6 mm3.
void note_bare_volume(const YamlNode* volume, ReadContext& context) {
  if (volume == nullptr || volume->text == "0" || !is_bare(*volume)) return;
  const bool metric = context.bare == BareLength::millimetre;
  ++(metric ? context.draft.volumes_taken_mm3 : context.draft.volumes_taken_in3);
}

}  // namespace

void read_node(const YamlNode& item, ReadContext& context) {
  MapReader<node_map> fields(item, context);
  Node node;
  node.where = item.where;
  node.name = fields.own_name(context.draft);
  node.kind = fields.word<node_kinds>("kind").value_or(NodeKind::end);
  node.at = fields.place("at");
  node.volume_in3 = fields.optional_number("volume");
  note_bare_volume(fields.find("volume"), context);
  node.fixed = fields.optional_flag("fixed");
  if (const YamlNode* arm = fields.find("arm")) node.arm = read_arm(*arm, node.at, context);
  if (const YamlNode* sector = fields.find("sector")) node.sector = read_sector(*sector, context);
  if (node.arm && node.sector)
    context.error(fields.where_of("sector"),
                  "a cable's end goes round on an arm or lies on a sector: leave one of them out");
  read_ports(fields, node, context);
  node.on_engine = fields.optional_flag("on_engine");
  node.connector = fields.optional_flag("connector");
  if (const YamlNode* loose = fields.find("loose")) node.loose = read_loose_end(*loose, context);
  if (node.kind != NodeKind::horn && node.kind != NodeKind::pedal)
    fields.refuse_keys_of("a horn or a pedal");
  context.draft.project.nodes.push_back(std::move(node));
}

void read_waiver(const YamlNode& item, ReadContext& context) {
  MapReader<waiver_map> fields(item, context);
  Waiver waiver;
  waiver.where = item.where;
  waiver.rule = fields.text("rule");
  waiver.route = fields.name("route", context.draft);
  waiver.reason = fields.text("reason");
  if (fields.has("near") != fields.has("within"))
    context.error(fields.has("near") ? fields.where_of("near") : fields.where_of("within"),
                  "'near' and 'within' go together");
  waiver.near = fields.optional_place("near");
  waiver.within_in = fields.optional_number("within").value_or(0);
  context.draft.project.waivers.push_back(std::move(waiver));
}

}  // namespace linewright
