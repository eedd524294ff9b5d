#include "input/control_cable_reader.hpp"

#include <fmt/format.h>

namespace linewright {

namespace {

constexpr std::array end_kinds{Choice<CableEndKind>{"swaged", CableEndKind::swaged},
                               Choice<CableEndKind>{"thimble", CableEndKind::thimble}};

constexpr NumberSpec takes_up{"what a terminal takes up", Dimension::length, Sign::not_negative};
constexpr NumberSpec grip{"a grip", Dimension::length, Sign::positive, largest_grip_in};
constexpr NumberSpec allowance{"an allowance"};
constexpr NumberSpec adjusted_length{"the length of a turnbuckle"};
constexpr NumberSpec lever_ratio{"a lever ratio", Dimension::plain, Sign::positive, 100, ""};
constexpr NumberSpec pilot_force{"a pilot force", Dimension::force, Sign::positive, 10'000, "lbf"};
constexpr NumberSpec stiffness{"an airframe stiffness", Dimension::stiffness, Sign::positive, 1e8,
                               "lbf/in"};

/// Below these a figure is a slip, and what is divided by it loses all meaning.
constexpr double smallest_lever_ratio = 0.01;
constexpr double smallest_stiffness_lbf_per_in = 1;
constexpr double smallest_force_lbf = 0.01;

/// A turnbuckle's longest over its shortest: its terminals' threads fit into its barrel
/// [calculated].
constexpr double most_adjustment_ratio = 2;

/// What only the other kind of end can have. A key that would be passed over is an error.
void check_end_keys(CableEndKind kind, FieldReader& fields, ReadContext& context) {
  const bool swaged = kind == CableEndKind::swaged;
  for (const char* key : {"takes_up", "grip"})
    if (!swaged && fields.has(key))
      context.error(fields.where_of(key), fmt::format("'{}' belongs to a swaged end", key));
  if (swaged && fields.has("allowance"))
    context.error(fields.where_of("allowance"), "'allowance' belongs to a thimble");
}

std::optional<CableEnd> read_end(const YamlNode& node, ReadContext& context) {
  FieldReader fields(node, "an end", context, {"kind", "takes_up", "grip", "allowance"});
  const auto kind = fields.choice("kind", "the kind of an end", end_kinds);
  if (!kind) return std::nullopt;
  CableEnd end;
  end.kind = *kind;
  end.where = node.where;
  check_end_keys(*kind, fields, context);
  if (*kind == CableEndKind::thimble) {
    end.inside_in = fields.number("allowance", allowance);
    return end;
  }
  end.takes_up_in = fields.number("takes_up", takes_up);
  end.inside_in = fields.number("grip", grip);
  return end;
}

CableEnds read_ends(const YamlNode& node, ReadContext& context) {
  FieldReader fields(node, "a cable's ends", context, {"from", "to"});
  CableEnds ends;
  if (const YamlNode* from = fields.find("from")) ends.from = read_end(*from, context);
  if (const YamlNode* to = fields.find("to")) ends.to = read_end(*to, context);
  if (node.kind == YamlNode::Kind::map && !fields.has("from") && !fields.has("to"))
    context.error(node.where, "a cable's ends need 'from', 'to' or both");
  return ends;
}

Adjustment read_adjustment(const YamlNode& node, double length_in, ReadContext& context) {
  FieldReader fields(node, "an adjustment", context, {"shortest", "longest"});
  Adjustment adjustment;
  adjustment.shortest_in = fields.number("shortest", adjusted_length);
  adjustment.longest_in = fields.number("longest", adjusted_length);
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

void read_lever(FieldReader& fields, Route& route, ReadContext& context) {
  const auto ratio = fields.optional_number("lever_ratio", lever_ratio);
  const auto force = fields.optional_number("pilot_force", pilot_force);
  if (ratio && *ratio < smallest_lever_ratio)
    context.error(fields.where_of("lever_ratio"),
                  fmt::format("a lever ratio must not be less than {}", smallest_lever_ratio));
  refuse_tiny_force(fields, "pilot_force", "a pilot force", force, context);
  if (fields.has("pilot_force") && !fields.has("lever_ratio"))
    context.error(fields.where_of("pilot_force"),
                  "'pilot_force' needs 'lever_ratio': the pull on the cable for each pound of it");
  if (ratio) route.lever = ControlLever{*ratio, force, fields.where_of("lever_ratio")};
}

}  // namespace

void refuse_tiny_force(FieldReader& fields, std::string_view key, std::string_view words,
                       std::optional<double> force_lbf, ReadContext& context) {
  if (force_lbf && *force_lbf < smallest_force_lbf)
    context.error(fields.where_of(key),
                  fmt::format("{} must not be less than {} lbf", words, smallest_force_lbf));
}

std::optional<double> read_airframe_stiffness(FieldReader& fields, ReadContext& context) {
  const auto read = fields.optional_number("airframe_stiffness", stiffness);
  if (read && *read < smallest_stiffness_lbf_per_in)
    context.error(fields.where_of("airframe_stiffness"),
                  fmt::format("an airframe stiffness must not be less than {} lbf/in",
                              smallest_stiffness_lbf_per_in));
  return read;
}

void read_control_cable(FieldReader& fields, Route& route, ReadContext& context) {
  if (const YamlNode* ends = fields.find("ends")) route.ends = read_ends(*ends, context);
  read_lever(fields, route, context);
  route.airframe_stiffness_lbf_per_in = read_airframe_stiffness(fields, context);
}

void read_turnbuckle(FieldReader& fields, Attachment& attachment, ReadContext& context) {
  if (const YamlNode* node = fields.find("adjustment"))
    attachment.adjustment = read_adjustment(*node, attachment.length_in, context);
  if (const YamlNode* node = fields.find("ends")) attachment.ends = read_ends(*node, context);
  if (attachment.kind.empty() || attachment.is_turnbuckle()) return;
  for (const char* key : {"adjustment", "ends"})
    if (fields.has(key))
      context.error(fields.where_of(key), fmt::format("'{}' belongs to a turnbuckle", key));
}

}  // namespace linewright
