#include "input/network_reader.hpp"

namespace linewright {

namespace {

constexpr std::array node_kinds{Choice<NodeKind>{"static-port", NodeKind::static_port},
                                Choice<NodeKind>{"pitot-probe", NodeKind::pitot_probe},
                                Choice<NodeKind>{"instrument", NodeKind::instrument},
                                Choice<NodeKind>{"drain", NodeKind::drain},
                                Choice<NodeKind>{"tee", NodeKind::tee},
                                Choice<NodeKind>{"union", NodeKind::union_fitting},
                                Choice<NodeKind>{"bulkhead", NodeKind::bulkhead},
                                Choice<NodeKind>{"cap", NodeKind::cap},
                                Choice<NodeKind>{"end", NodeKind::end},
                                Choice<NodeKind>{"horn", NodeKind::horn},
                                Choice<NodeKind>{"pedal", NodeKind::pedal}};

constexpr NumberSpec volume{"a volume", Dimension::volume, Sign::not_negative, 1e6, "in3"};

Arm read_arm(const YamlNode& node, Vec3 at, ReadContext& context) {
  FieldReader fields(node, "an arm", context, {"pivot", "axis"});
  Arm arm;
  arm.pivot = fields.place("pivot");
  arm.axis = fields.direction("axis");
  const double length = norm(cross(at - arm.pivot, arm.axis)) / norm(arm.axis);
  if (length < smallest_length_in)
    context.error(node.where, "the arm has no length: the node lies on its axis");
  return arm;
}

}  // namespace

void read_node(const YamlNode& item, ReadContext& context) {
  FieldReader fields(item, "a node", context, {"name", "kind", "at", "volume", "fixed", "arm"});
  Node node;
  node.where = item.where;
  node.name = fields.give_name(Named::node);
  node.kind = fields.choice("kind", "the kind of a node", node_kinds).value_or(NodeKind::end);
  node.at = fields.place("at");
  node.volume_in3 = fields.optional_number("volume", volume);
  node.fixed = fields.optional_flag("fixed");
  if (const YamlNode* arm = fields.find("arm")) {
    node.arm = read_arm(*arm, node.at, context);
    if (node.kind != NodeKind::horn && node.kind != NodeKind::pedal)
      context.error(fields.where_of("arm"), "'arm' belongs to a horn or a pedal");
  }
  context.draft.project.nodes.push_back(std::move(node));
}

void read_waiver(const YamlNode& item, ReadContext& context) {
  FieldReader fields(item, "a waiver", context, {"rule", "route", "near", "within", "reason"});
  Waiver waiver;
  waiver.where = item.where;
  waiver.rule = fields.text("rule", "the name of a rule");
  waiver.route = fields.use_name("route", Named::route);
  waiver.reason = fields.text("reason", "a reason");
  if (fields.has("near") != fields.has("within"))
    context.error(fields.where_of(fields.has("near") ? "near" : "within"),
                  "'near' and 'within' go together");
  if (fields.has("near")) waiver.near = fields.place("near");
  waiver.within_in = fields.optional_number("within", {"a distance"}).value_or(0);
  context.draft.project.waivers.push_back(std::move(waiver));
}

}  // namespace linewright
