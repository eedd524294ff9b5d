#include "input/settings_reader.hpp"

#include <fmt/format.h>

#include <cmath>

namespace linewright {

namespace {

constexpr double usual_build_tolerance_in = 0.06;
constexpr double usual_measuring_tolerance_in = 1.0 / 32;
constexpr TemperatureRange usual_temperature{-20, 70, 120};
const LoadFactor usual_load_factor{3.8, -1.5};

using ExcitationReader = MapReader<excitation_map>;

TemperatureRange read_temperature(const YamlNode& node, ReadContext& context) {
  MapReader<temperature_map> fields(node, context);
  TemperatureRange range;
  range.min_degf = fields.number("min");
  range.rigged_degf = fields.number("rigged");
  range.max_degf = fields.number("max");
  if (range.min_degf > range.max_degf)
    context.error(fields.where_of("max"), "'max' must not be below 'min'");
  else if (range.rigged_degf < range.min_degf || range.rigged_degf > range.max_degf)
    context.error(fields.where_of("rigged"), "'rigged' must lie between 'min' and 'max'");
  return range;
}

LoadFactor read_load_factor(const YamlNode& node, ReadContext& context) {
  MapReader<load_factor_map> fields(node, context);
  LoadFactor factor;
  factor.where = fields.where_of("positive");
  factor.positive = fields.number("positive");
  factor.negative = fields.number("negative");
  if (factor.positive < 1)
    context.error(
        fields.where_of("positive"),
        fmt::format("the positive load factor must not be under 1, which level flight has: "
                    "found {:.4g}",
                    factor.positive));
  if (factor.negative > 0)
    context.error(fields.where_of("negative"), "the negative load factor must not be above zero");
  return factor;
}

SpeedBand read_cruise(ExcitationReader& fields, const Excitation& excitation,
                      ReadContext& context) {
  const auto [low, high] = fields.pair("cruise_rpm");
  if (low >= high)
    context.error(fields.where_of("cruise_rpm"),
                  "the slowest cruise speed must be below the fastest");
  else if (low < excitation.idle_rpm || high > excitation.redline_rpm)
    context.error(fields.where_of("cruise_rpm"),
                  "the cruise speeds must lie within 'propeller_rpm'");
  return {low, high};
}

Excitation read_excitation(const YamlNode& node, ReadContext& context) {
  ExcitationReader fields(node, context);
  Excitation excitation;
  excitation.where = node.where;
  const auto [idle, redline] = fields.pair("propeller_rpm");
  if (idle >= redline)
    context.error(fields.where_of("propeller_rpm"), "the idle speed must be below the redline");
  excitation.idle_rpm = idle;
  excitation.redline_rpm = redline;
  if (fields.has("propeller_rpm") && fields.has("cruise_rpm"))
    excitation.cruise = read_cruise(fields, excitation, context);
  const double blades = fields.number("blades");
  if (std::isfinite(blades)) excitation.blades = static_cast<int>(blades);
  return excitation;
}

void assume(ReadContext& context, std::string sentence) {
  context.draft.project.assumptions.push_back(std::move(sentence));
}

}  // namespace

void read_settings(ProjectReader& fields, ReadContext& context) {
  Project& project = context.draft.project;
  project.name = fields.text("name");

  if (!fields.has("build_tolerance"))
    assume(context, "build_tolerance is not stated: 0.06 in was taken");
  project.build_tolerance_in =
      fields.optional_number("build_tolerance").value_or(usual_build_tolerance_in);
  context.draft.measuring_unstated = !fields.has("measuring_tolerance");
  project.measuring_tolerance_in =
      fields.optional_number("measuring_tolerance").value_or(usual_measuring_tolerance_in);

  if (const YamlNode* node = fields.find("temperature")) {
    project.temperature = read_temperature(*node, context);
    if (project.temperature.max_degf - project.temperature.min_degf < 1)
      assume(context,
             "heat and cold were taken to do nothing: the temperature range has next to no width");
  } else {
    assume(context, "temperature is not stated: -20 to 120 degF, rigged at 70 degF, was taken");
    project.temperature = usual_temperature;
  }

  if (const YamlNode* node = fields.find("load_factor")) {
    project.load_factor = read_load_factor(*node, context);
  } else {
    assume(context, "load_factor is not stated: +3.8 and -1.5 were taken");
    project.load_factor = usual_load_factor;
  }

  project.dual_controls = fields.optional_flag("dual_controls");
  project.weight_lbf = fields.optional_number("weight");
  project.climb_ft_per_min = fields.optional_number("climb");
  project.airframe_stiffness_lbf_per_in = fields.optional_number("airframe_stiffness");
  if (const YamlNode* node = fields.find("excitation"))
    project.excitation = read_excitation(*node, context);
}

void read_attitude(const YamlNode& node, ReadContext& context) {
  MapReader<attitude_map> fields(node, context);
  Attitude attitude;
  attitude.where = node.where;
  attitude.name = fields.own_name(context.draft);
  if (node.kind == YamlNode::Kind::map && !fields.has("pitch") && !fields.has("roll"))
    context.error(node.where, "an attitude needs 'pitch', 'roll' or both");
  attitude.pitch_deg = fields.optional_number("pitch").value_or(0);
  attitude.roll_deg = fields.optional_number("roll").value_or(0);
  context.draft.project.attitudes.push_back(std::move(attitude));
}

BareLength read_units(ProjectReader& fields) {
  return fields.optional_word<bare_lengths>("units").value_or(BareLength::inch);
}

}  // namespace linewright
