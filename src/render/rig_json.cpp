#include "render/rig_json.hpp"

#include "model/angle.hpp"
#include "physics/cable.hpp"
#include "render/json_values.hpp"
#include "render/rig_words.hpp"

namespace linewright {

namespace {

std::string_view guide_kind_word(GuideKind kind) {
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

Json chart_json(const std::vector<ChartRow>& chart) {
  Json rows = Json::array();
  for (const ChartRow& row : chart)
    rows.push_back({{"temperature_degF", json_number(row.temperature_degf)},
                    {"tension_lbf", json_number(row.tension_lbf)},
                    {"slack_in", json_number(row.slack_in)},
                    {"as_rigged", row.as_rigged}});
  return rows;
}

std::optional<double> side_load_lbf(const RiggedCable& cable, const GuidedTurn& turn) {
  if (!cable.most_lbf || cable.is_rigged_over_strength()) return std::nullopt;
  return guide_push_lbf(*cable.most_lbf, turn.turn_rad);
}

Json turns_json(const RiggedCable& cable) {
  Json turns = Json::array();
  for (const GuidedTurn& turn : cable.friction.turns)
    turns.push_back({{"kind", guide_kind_word(turn.kind)},
                     {"guide", turn.guide},
                     {"at_in", json_number(turn.at_in)},
                     {"turn_deg", json_number(turn.turn_rad * degrees_per_radian)},
                     {"tension_ratio", json_number(turn.ratio)},
                     {"side_load_lbf", json_number(side_load_lbf(cable, turn))}});
  return turns;
}

/// What another cable's pull leaves in this one; null where no other is known to work its control.
Json slack_side_json(const std::optional<RigSlackSide>& side) {
  if (!side) return nullptr;
  return {{"pulled", side->pulled},
          {"pull_lbf", json_number(side->pull_lbf)},
          {"tension_lbf", json_number(side->tension_lbf)},
          {"slack_in", json_number(side->slack_in)}};
}

Json span_json(const RigSpan& span) {
  Json meetings = Json::array();
  for (const OrderMeeting& each : span.meetings)
    meetings.push_back({{"times_per_turn", each.times_per_turn},
                        {"propeller_rpm", json_number(each.rpm)},
                        {"in_range", each.in_range}});
  return {{"from_in", json_number(span.from_in)},
          {"to_in", json_number(span.to_in)},
          {"from", text_or_null(span.from)},
          {"to", text_or_null(span.to)},
          {"sag_in", json_number(span.sag_in)},
          {"sag_at_load_factor_in", json_number(span.sag_at_load_factor_in)},
          {"natural_frequency_hz", json_number(span.natural_frequency_hz)},
          {"excited_at", std::move(meetings)}};
}

Json pieces_json(const CableCut& cut) {
  Json pieces = Json::array();
  for (const CablePiece& piece : cut.pieces)
    pieces.push_back({{"from", piece.from},
                      {"to", piece.to},
                      {"cut_length_in", json_number(piece.cut_length_in)}});
  return pieces;
}

Json json_flag(const std::optional<bool>& flag) {
  return flag ? Json(*flag) : Json(nullptr);
}

/// All turnbuckles of a cable together, and each by itself; null where there is none.
Json turnbuckle_json(const CableCut& cut) {
  if (cut.turnbuckles.empty()) return nullptr;
  Json barrels = Json::array();
  for (const Turnbuckle& each : cut.turnbuckles) {
    const auto length = [&](double (Adjustment::*of)() const) {
      return each.adjustment ? json_number((*each.adjustment.*of)()) : Json(nullptr);
    };
    barrels.push_back({{"name", each.name},
                       {"at_in", json_number(each.at_in)},
                       {"length_drawn_in", json_number(each.drawn_in)},
                       {"length_at_mid_adjustment_in", length(&Adjustment::middle_in)},
                       {"adjustment_each_way_in", length(&Adjustment::each_way_in)}});
  }
  const std::string note = take_up_words(cut, {});
  return {{"adjustment_each_way_in", json_number(cut.each_way_in)},
          {"constructional_stretch_in", json_number(cut.bedding_in_in)},
          {"build_tolerance_in", json_number(cut.tolerance_in)},
          {"takes_up_tolerance", json_flag(cut.takes_up_tolerance())},
          {"takes_up_tolerance_and_stretch", json_flag(cut.takes_up_all())},
          {"note", text_or_null(note)},
          {"barrels", std::move(barrels)}};
}

/// What the pilot pulls on the cable; null where no lever ratio is stated.
Json pilot_json(const std::optional<PilotPull>& pilot) {
  if (!pilot) return nullptr;
  return {{"lever_ratio", json_number(pilot->lever_ratio)},
          {"at", pilot->grip},
          {"force_lbf", json_number(pilot->force_lbf)},
          {"force_stated", pilot->stated},
          {"cable_load_lbf", json_number(pilot->pull_lbf)},
          {"cable_tension_lbf", json_number(pilot->tension_lbf)},
          {"strength_factor", json_number(pilot->strength_factor)},
          {"breakout_lbf", json_number(pilot->breakout_lbf)},
          {"breakout_all_cables_lbf", json_number(pilot->breakout_all_lbf)}};
}

Json gaps_json(const std::vector<LeastGap>& gaps) {
  Json rows = Json::array();
  for (const LeastGap& gap : gaps)
    rows.push_back({{"rule", gap.rule},
                    {"with", text_or_null(gap.with)},
                    {"gap_in", json_length(gap.gap_in)},
                    {"limit_in", json_length(gap.limit_in)},
                    {"distance_in", json_distance(gap.distance_in)},
                    {"verdict", verdict_word(gap.verdict)},
                    {"message", gap.message}});
  return rows;
}

Json cable_json(const RiggedCable& cable) {
  Json spans = Json::array();
  for (const RigSpan& span : cable.spans) spans.push_back(span_json(span));
  return {{"name", cable.name},
          {"line", cable.line},
          {"from", cable.from},
          {"to", cable.to},
          {"control", text_or_null(cable.control)},
          {"length_in", json_number(cable.length_in)},
          {"cut_length_in", json_number(cable.cut.cut_length_in)},
          {"pieces", pieces_json(cable.cut)},
          {"turnbuckle", turnbuckle_json(cable.cut)},
          {"rigged_tension_lbf", json_number(cable.rigged_lbf)},
          {"minimum_rigged_tension_lbf", json_number(cable.minimum_rigged_lbf)},
          {"limit_load_lbf", json_number(cable.limit_load_lbf)},
          {"airframe_stiffness_lbf_per_in", json_number(cable.airframe_stiffness_lbf_per_in)},
          {"tension_slope_lbf_per_degF", json_number(cable.tension_slope_lbf_per_degf)},
          {"tension", chart_json(cable.chart)},
          {"stretch_as_rigged_in", json_number(cable.stretch_as_rigged_in)},
          {"stretch_at_limit_load_in", json_number(cable.stretch_at_limit_load_in)},
          {"travel_lost_in", json_number(cable.travel_lost_in)},
          {"travel_lost_share", json_number(cable.travel_lost_share)},
          {"friction_lbf", json_number(cable.friction_lbf)},
          {"slack_side", slack_side_json(cable.slack_side)},
          {"turns", turns_json(cable)},
          {"breaking_strength_lbf", json_number(cable.breaking_strength_lbf)},
          {"strength_factor", json_number(cable.strength_factor)},
          {"rigged_over_breaking_strength", cable.is_rigged_over_strength()},
          {"pilot", pilot_json(cable.pilot)},
          {"clearance_through_travel", gaps_json(cable.least_gaps)},
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
