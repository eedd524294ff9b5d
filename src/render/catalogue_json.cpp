#include "render/catalogue_json.hpp"

#include "render/amount.hpp"
#include "render/json_values.hpp"

namespace linewright {

namespace {

std::string_view kind_word(LineKind kind) {
  switch (kind) {
    case LineKind::rigid_tube:
      return "rigid-tube";
    case LineKind::plastic_tube:
      return "plastic-tube";
    case LineKind::hose:
      return "hose";
    case LineKind::cable:
      return "cable";
    case LineKind::wire:
      return "wire";
    case LineKind::rod:
      return "rod";
    case LineKind::conduit:
      return "conduit";
  }
  return "";
}

Json source_json(const Source& source) {
  return {{"text", source.text}, {"mark", mark_word(source.mark)}};
}

Json sourced_json(const std::optional<SourcedValue>& value) {
  if (!value) return nullptr;
  return {{"value", json_number(value->value)},
          {"source", value->source.text},
          {"mark", mark_word(value->source.mark)}};
}

Json location_json(const std::optional<SourceLocation>& where) {
  if (!where) return nullptr;
  return {{"file", where->file}, {"line", where->line}, {"column", where->column}};
}

Json stock_json(const std::vector<SourcedValue>& lengths) {
  Json list = Json::array();
  for (const SourcedValue& each : lengths) list.push_back(sourced_json(each));
  return list;
}

Json line_json(const Line& line) {
  return {{"name", line.name},
          {"kind", kind_word(line.kind)},
          {"material", line.material},
          {"construction", line.construction},
          {"outside_diameter_in", json_number(line.outside_diameter_in)},
          {"inside_diameter_in", json_number(line.inside_diameter_in)},
          {"plus_tolerance_in", json_number(line.plus_tolerance_in)},
          {"size_source", source_json(line.size_source)},
          {"minimum_bend_radius_in", sourced_json(line.minimum_bend_radius_in)},
          {"usual_bend_radius_in", json_number(line.usual_bend_radius_in)},
          {"bend_total_deg", sourced_json(line.bend_total_deg)},
          {"support_spacing_in", sourced_json(line.support_spacing_in)},
          {"weight_lb_per_in", sourced_json(line.weight_lb_per_in)},
          {"youngs_modulus_psi", sourced_json(line.youngs_modulus_psi)},
          {"expansion_per_degF", sourced_json(line.expansion_per_degf)},
          {"slack_fraction", sourced_json(line.slack_fraction)},
          {"breaking_strength_lbf", sourced_json(line.breaking_strength_lbf)},
          {"axial_stiffness_lbf", sourced_json(line.axial_stiffness_lbf)},
          {"cut_allowance_in", json_number(line.cut_allowance_in)},
          {"stock_lengths_in", stock_json(line.stock_lengths_in)},
          {"location", location_json(line.where)}};
}

Json clamp_json(const ClampSize& clamp) {
  return {{"name", clamp.name},
          {"dash", clamp.dash},
          {"nominal_diameter_in", json_number(clamp.nominal_diameter_in)},
          {"source", source_json(clamp.source)}};
}

}  // namespace

std::string catalogue_json(const Catalogue& catalogue) {
  Json lines = Json::array();
  for (const Line& line : catalogue.lines) lines.push_back(line_json(line));
  Json clamps = Json::array();
  for (const ClampSize& clamp : catalogue.clamps) clamps.push_back(clamp_json(clamp));
  return json_text(
      {{"linewright", json_header()}, {"lines", std::move(lines)}, {"clamps", std::move(clamps)}});
}

}  // namespace linewright
