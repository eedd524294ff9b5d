#include "input/settings_reader.hpp"

#include <cmath>

#include "input/control_cable_reader.hpp"

namespace linewright {

namespace {

constexpr NumberSpec tolerance{"a build tolerance", Dimension::length, Sign::not_negative};
constexpr NumberSpec temperature{"a temperature", Dimension::temperature, Sign::any, 400, "degF"};
constexpr NumberSpec load{"a load factor", Dimension::plain, Sign::any, 100, ""};
constexpr NumberSpec climb{"a climb rate", Dimension::speed_vertical, Sign::positive, 100'000,
                           "ft/min"};
constexpr NumberSpec speed{"a propeller speed", Dimension::rotational_speed, Sign::positive,
                           100'000, "rpm"};
constexpr NumberSpec blade_count{"a number of blades", Dimension::plain, Sign::positive, 64, ""};
constexpr NumberSpec pitch{"a pitch", Dimension::angle, Sign::any, 90, "deg"};
constexpr NumberSpec roll{"a roll", Dimension::angle, Sign::any, 180, "deg"};

constexpr double usual_build_tolerance_in = 0.06;
constexpr TemperatureRange usual_temperature{-20, 70, 120};
constexpr LoadFactor usual_load_factor{3.8, -1.5};

constexpr std::array unit_words{Choice<BareLength>{"in", BareLength::inch},
                                Choice<BareLength>{"mm", BareLength::millimetre}};

TemperatureRange read_temperature(const YamlNode& node, ReadContext& context) {
  FieldReader fields(node, "a temperature range", context, {"min", "rigged", "max"});
  TemperatureRange range;
  range.min_degf = fields.number("min", temperature);
  range.rigged_degf = fields.number("rigged", temperature);
  range.max_degf = fields.number("max", temperature);
  if (range.min_degf > range.max_degf)
    context.error(fields.where_of("max"), "'max' must not be below 'min'");
  else if (range.rigged_degf < range.min_degf || range.rigged_degf > range.max_degf)
    context.error(fields.where_of("rigged"), "'rigged' must lie between 'min' and 'max'");
  return range;
}

LoadFactor read_load_factor(const YamlNode& node, ReadContext& context) {
  FieldReader fields(node, "a load factor", context, {"positive", "negative"});
  LoadFactor factor;
  factor.positive = fields.number("positive", load);
  factor.negative = fields.number("negative", load);
  if (factor.positive <= 0)
    context.error(fields.where_of("positive"), "the positive load factor must be above zero");
  if (factor.negative > 0)
    context.error(fields.where_of("negative"), "the negative load factor must not be above zero");
  return factor;
}

std::optional<SpeedBand> read_cruise(const YamlNode& node, const Excitation& excitation,
                                     ReadContext& context) {
  const auto [low, high] = read_pair(node, speed, "two speeds [slowest, fastest]", context);
  if (low >= high)
    context.error(node.where, "the slowest cruise speed must be below the fastest");
  else if (low < excitation.idle_rpm || high > excitation.redline_rpm)
    context.error(node.where, "the cruise speeds must lie within 'propeller_rpm'");
  return SpeedBand{low, high};
}

Excitation read_excitation(const YamlNode& node, ReadContext& context) {
  FieldReader fields(node, "an excitation", context, {"propeller_rpm", "cruise_rpm", "blades"});
  Excitation excitation;
  excitation.where = node.where;
  if (const YamlNode* range = fields.require("propeller_rpm")) {
    const auto [idle, redline] = read_pair(*range, speed, "two speeds [idle, redline]", context);
    if (idle >= redline) context.error(range->where, "the idle speed must be below the redline");
    excitation.idle_rpm = idle;
    excitation.redline_rpm = redline;
    if (const YamlNode* cruise = fields.find("cruise_rpm"))
      excitation.cruise = read_cruise(*cruise, excitation, context);
  }
  const double blades = fields.number("blades", blade_count);
  if (!std::isfinite(blades)) return excitation;
  excitation.blades = static_cast<int>(blades);
  if (blades != std::floor(blades))
    context.error(fields.where_of("blades"), "a number of blades must be a whole number");
  return excitation;
}

void assume(ReadContext& context, std::string sentence) {
  context.draft.project.assumptions.push_back(std::move(sentence));
}

}  // namespace

void read_settings(FieldReader& fields, ReadContext& context) {
  Project& project = context.draft.project;
  project.name = fields.text("name", "a name");

  if (!fields.has("build_tolerance"))
    assume(context, "build_tolerance is not stated: 0.06 in was taken");
  project.build_tolerance_in =
      fields.optional_number("build_tolerance", tolerance).value_or(usual_build_tolerance_in);

  if (const YamlNode* node = fields.find("temperature")) {
    project.temperature = read_temperature(*node, context);
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
  project.climb_ft_per_min = fields.optional_number("climb", climb);
  project.airframe_stiffness_lbf_per_in = read_airframe_stiffness(fields, context);
  if (const YamlNode* node = fields.find("excitation"))
    project.excitation = read_excitation(*node, context);
}

void read_attitude(const YamlNode& node, ReadContext& context) {
  FieldReader fields(node, "an attitude", context, {"name", "pitch", "roll"});
  Attitude attitude;
  attitude.where = node.where;
  attitude.name = fields.give_name(Named::attitude);
  if (node.kind == YamlNode::Kind::map && !fields.has("pitch") && !fields.has("roll"))
    context.error(node.where, "an attitude needs 'pitch', 'roll' or both");
  attitude.pitch_deg = fields.optional_number("pitch", pitch).value_or(0);
  attitude.roll_deg = fields.optional_number("roll", roll).value_or(0);
  context.draft.project.attitudes.push_back(std::move(attitude));
}

BareLength read_units(FieldReader& fields) {
  return fields.optional_choice("units", "the units of a file", unit_words)
      .value_or(BareLength::inch);
}

}  // namespace linewright
