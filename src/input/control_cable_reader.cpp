#include "input/control_cable_reader.hpp"

#include <fmt/format.h>

#include "input/field_words.hpp"

namespace linewright {

namespace {

/// A turnbuckle's longest over its shortest: its terminals' threads fit into its barrel
/// [calculated].
constexpr double most_adjustment_ratio = 2;

std::optional<CableEnd> read_end(const YamlNode& node, ReadContext& context) {
  MapReader<cable_end_map> fields(node, context);
  const auto kind = fields.word<cable_end_kinds>("kind");
  if (!kind) return std::nullopt;
  CableEnd end;
  end.kind = *kind;
  end.where = node.where;
  if (*kind == CableEndKind::swaged)
    fields.refuse_keys_of("a thimble");
  else
    fields.refuse_keys_of("a swaged end");
  end.joint = fields.optional_word<end_joints>("joint");
  if (*kind == CableEndKind::thimble) {
    end.inside_in = fields.number("allowance");
    return end;
  }
  end.takes_up_in = fields.number("takes_up");
  end.inside_in = fields.number("grip");
  return end;
}

CableEnds read_ends(const YamlNode& node, ReadContext& context) {
  MapReader<cable_ends_map> fields(node, context);
  CableEnds ends;
  if (const YamlNode* from = fields.find("from")) ends.from = read_end(*from, context);
  if (const YamlNode* to = fields.find("to")) ends.to = read_end(*to, context);
  if (node.kind == YamlNode::Kind::map && !fields.has("from") && !fields.has("to"))
    context.error(node.where, "a cable's ends need 'from', 'to' or both");
  return ends;
}

Adjustment read_adjustment(const YamlNode& node, double length_in, ReadContext& context) {
  MapReader<adjustment_map> fields(node, context);
  Adjustment adjustment;
  adjustment.shortest_in = fields.number("shortest");
  adjustment.longest_in = fields.number("longest");
  if (adjustment.shortest_in >= adjustment.longest_in)
    context.error(fields.where_of("longest"), "'longest' must be more than 'shortest'");
  else if (adjustment.longest_in > most_adjustment_ratio * adjustment.shortest_in)
    context.error(fields.where_of("longest"),
                  fmt::format("'longest', {:.4g} in, is over twice 'shortest', {:.4g} in: no "
                              "turnbuckle has so much thread",
                              adjustment.longest_in, adjustment.shortest_in),
                  std::string(units_suggestion));
  else if (length_in < adjustment.shortest_in || length_in > adjustment.longest_in)
    context.error(node.where, "the turnbuckle's 'length' must lie within its adjustment");
  return adjustment;
}

void read_lever(MapReader<route_map>& fields, Route& route, ReadContext& context) {
  const auto ratio = fields.optional_number("lever_ratio");
  const auto force = fields.optional_number("pilot_force");
  if (fields.has("pilot_force") && !fields.has("lever_ratio"))
    context.error(fields.where_of("pilot_force"),
                  "'pilot_force' needs 'lever_ratio': the pull on the cable for each pound of it");
  if (ratio) route.lever = ControlLever{*ratio, force, fields.where_of("lever_ratio")};
}

}  // namespace

void read_control_cable(MapReader<route_map>& fields, Route& route, ReadContext& context) {
  if (const YamlNode* ends = fields.find("ends")) route.ends = read_ends(*ends, context);
  read_lever(fields, route, context);
  route.worked_by = fields.optional_word<control_grips>("worked_by");
  route.airframe_stiffness_lbf_per_in = fields.optional_number("airframe_stiffness");
}

void read_turnbuckle(MapReader<attachment_map>& fields, Attachment& attachment,
                     ReadContext& context) {
  if (const YamlNode* node = fields.find("adjustment"))
    attachment.adjustment = read_adjustment(*node, attachment.length_in, context);
  if (const YamlNode* node = fields.find("ends")) attachment.ends = read_ends(*node, context);
  if (attachment.kind.empty() || attachment.is_turnbuckle()) return;
  fields.refuse_keys_of("a turnbuckle");
}

}  // namespace linewright
