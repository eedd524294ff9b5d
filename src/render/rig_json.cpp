#include "render/rig_json.hpp"

#include "model/angle.hpp"
#include "render/json_values.hpp"

namespace linewright {

namespace {

std::string_view kind_word(GuideKind kind) {
  switch (kind) {
    case GuideKind::pulley:
      return "pulley";
    case GuideKind::fairlead:
      return "fairlead";
    case GuideKind::sleeve:
      return "sleeve";
  }
  return "fairlead";
}

Json name_or_null(const std::string& name) {
  return name.empty() ? Json(nullptr) : Json(name);
}

Json chart_json(const std::vector<ChartRow>& chart) {
  Json rows = Json::array();
  for (const ChartRow& row : chart)
    rows.push_back({{"temperature_degF", json_number(row.temperature_degf)},
                    {"tension_lbf", json_number(row.tension_lbf)},
                    {"slack_in", json_number(row.slack_in)},
                    {"as_rigged", row.as_rigged}});
  return rows;
}

Json turns_json(const CableFriction& friction) {
  Json turns = Json::array();
  for (const GuidedTurn& turn : friction.turns)
    turns.push_back({{"kind", kind_word(turn.kind)},
                     {"guide", turn.guide},
                     {"at_in", json_number(turn.at_in)},
                     {"turn_deg", json_number(turn.turn_rad * degrees_per_radian)},
                     {"tension_ratio", json_number(turn.ratio)}});
  return turns;
}

Json span_json(const RigSpan& span) {
  Json meetings = Json::array();
  for (const OrderMeeting& each : span.meetings)
    meetings.push_back({{"times_per_turn", each.times_per_turn},
                        {"propeller_rpm", json_number(each.rpm)},
                        {"in_range", each.in_range}});
  return {{"from_in", json_number(span.from_in)},
          {"to_in", json_number(span.to_in)},
          {"from", name_or_null(span.from)},
          {"to", name_or_null(span.to)},
          {"sag_in", json_number(span.sag_in)},
          {"sag_at_load_factor_in", json_number(span.sag_at_load_factor_in)},
          {"natural_frequency_hz", json_number(span.natural_frequency_hz)},
          {"excited_at", std::move(meetings)}};
}

Json cable_json(const RiggedCable& cable) {
  Json spans = Json::array();
  for (const RigSpan& span : cable.spans) spans.push_back(span_json(span));
  return {{"name", cable.name},
          {"line", cable.line},
          {"from", cable.from},
          {"to", cable.to},
          {"control", name_or_null(cable.control)},
          {"length_in", json_number(cable.length_in)},
          {"cut_length_in", json_number(cable.cut_length_in)},
          {"rigged_tension_lbf", json_number(cable.rigged_lbf)},
          {"minimum_rigged_tension_lbf", json_number(cable.minimum_rigged_lbf)},
          {"limit_load_lbf", json_number(cable.limit_load_lbf)},
          {"tension", chart_json(cable.chart)},
          {"stretch_as_rigged_in", json_number(cable.stretch_as_rigged_in)},
          {"stretch_at_limit_load_in", json_number(cable.stretch_at_limit_load_in)},
          {"travel_lost_in", json_number(cable.travel_lost_in)},
          {"travel_lost_share", json_number(cable.travel_lost_share)},
          {"friction_lbf", json_number(cable.friction_lbf)},
          {"turns", turns_json(cable.friction)},
          {"breaking_strength_lbf", json_number(cable.breaking_strength_lbf)},
          {"strength_factor", json_number(cable.strength_factor)},
          {"spans", std::move(spans)},
          {"missing", cable.missing}};
}

}  // namespace

std::string rig_json(const Rig& rig) {
  Json cables = Json::array();
  for (const RiggedCable& cable : rig.cables) cables.push_back(cable_json(cable));
  return json_text({{"linewright", json_header()},
                    {"project", {{"name", rig.project_name}}},
                    {"load_factor", json_number(rig.load_factor)},
                    {"cables", std::move(cables)},
                    {"notes", rig.notes},
                    {"assumptions", rig.assumptions}});
}

}  // namespace linewright
