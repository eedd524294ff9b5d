#include "render/catalogue_json.hpp"

#include "render/amount.hpp"
#include "render/json_values.hpp"

namespace linewright {

namespace {

std::string_view line_kind_word(LineKind kind) {
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

std::string_view fitting_kind_word(FittingKind kind) {
  switch (kind) {
    case FittingKind::straight_union:
      return "union";
    case FittingKind::bulkhead_union:
      return "bulkhead";
    case FittingKind::elbow_90:
      return "elbow-90";
    case FittingKind::elbow_45:
      return "elbow-45";
    case FittingKind::tee:
      return "tee";
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
          {"kind", line_kind_word(line.kind)},
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

Json fitting_json(const Fitting& fitting) {
  Json take_up = Json::array();
  for (const SourcedValue& each : fitting.take_up_in) take_up.push_back(sourced_json(each));
  return {{"name", fitting.name},
          {"kind", fitting_kind_word(fitting.kind)},
          {"standard", fitting.standard},
          {"tube_diameter_in", json_number(fitting.tube_diameter_in)},
          {"source", source_json(fitting.source)},
          {"take_up_in", std::move(take_up)},
          {"body_diameter_in", sourced_json(fitting.body_diameter_in)},
          {"nut_in", sourced_json(fitting.nut_in)},
          {"insertion_in", sourced_json(fitting.insertion_in)},
          {"bore_in", sourced_json(fitting.bore_in)},
          {"thread_in", sourced_json(fitting.thread_in)},
          {"location", location_json(fitting.where)}};
}

}  // namespace

std::string catalogue_json(const Catalogue& catalogue) {
  Json lines = Json::array();
  for (const Line& line : catalogue.lines) lines.push_back(line_json(line));
  Json clamps = Json::array();
  for (const ClampSize& clamp : catalogue.clamps) clamps.push_back(clamp_json(clamp));
  Json fittings = Json::array();
  for (const Fitting& fitting : catalogue.fittings) fittings.push_back(fitting_json(fitting));
  return json_text({{"linewright", json_header()},
                    {"lines", std::move(lines)},
                    {"clamps", std::move(clamps)},
                    {"fittings", std::move(fittings)}});
}

}  // namespace linewright
