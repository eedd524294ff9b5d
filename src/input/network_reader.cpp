#include "input/network_reader.hpp"

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

}  // namespace

void read_node(const YamlNode& item, ReadContext& context) {
  MapReader<node_map> fields(item, context);
  Node node;
  node.where = item.where;
  node.name = fields.own_name(context.draft);
  node.kind = fields.word<node_kinds>("kind").value_or(NodeKind::end);
  node.at = fields.place("at");
  node.volume_in3 = fields.optional_number("volume");
  node.fixed = fields.optional_flag("fixed");
  if (const YamlNode* arm = fields.find("arm")) node.arm = read_arm(*arm, node.at, context);
  if (const YamlNode* sector = fields.find("sector")) node.sector = read_sector(*sector, context);
  if (node.arm && node.sector)
    context.error(fields.where_of("sector"),
                  "a cable's end goes round on an arm or lies on a sector: leave one of them out");
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
