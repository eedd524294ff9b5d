#include "render/rig_csv.hpp"

#include <fmt/format.h>

#include <map>
#include <optional>

#include "render/amount.hpp"
#include "render/cutlist_csv.hpp"
#include "render/report.hpp"

namespace linewright {

namespace {

/// Fields by the name of their column, without its unit.
using Fields = std::map<std::string, std::string, std::less<>>;

struct TensionColumn {
  std::string_view name;
  std::string_view unit;  ///< "in" stands for the unit of length asked for
};

constexpr TensionColumn columns[] = {
    {"record", ""},
    {"cable", ""},
    {"line", ""},
    {"control", ""},
    {"from", ""},
    {"to", ""},
    {"length", "in"},
    {"cut_length", "in"},
    {"rigged_tension", "lbf"},
    {"minimum_rigged_tension", "lbf"},
    {"limit_load", "lbf"},
    {"stretch_as_rigged", "in"},
    {"stretch_at_limit_load", "in"},
    {"travel_lost", "in"},
    {"travel_lost_share", ""},
    {"slack_side_tension", "lbf"},
    {"slack_side_slack", "in"},
    {"friction", "lbf"},
    {"strength_factor", ""},
    {"adjustment_each_way", "in"},
    {"airframe_stiffness", "lbf_per_in"},
    {"lever_ratio", ""},
    {"pilot_force", "lbf"},
    {"pilot_cable_load", "lbf"},
    {"pilot_cable_tension", "lbf"},
    {"pilot_strength_factor", ""},
    {"breakout", "lbf"},
    {"breakout_all_cables", "lbf"},
    {"missing", ""},
    {"temperature", "degF"},
    {"tension", "lbf"},
    {"slack", "in"},
    {"span_from", "in"},
    {"span_to", "in"},
    {"sag", "in"},
    {"sag_at_load_factor", "in"},
    {"natural_frequency", "hz"},
    {"first_order", "rpm"},
    {"blade_order", "rpm"},
    {"rule", ""},
    {"with", ""},
    {"gap", "in"},
    {"limit", "in"},
    {"distance", "in"},
    {"verdict", ""},
};

std::string number(const std::optional<double>& value, int decimals) {
  return value ? fixed_number(*value, decimals) : std::string();
}

class Table {
 public:
  explicit Table(LengthUnit unit) : unit_(unit) {
    Fields names;
    for (const TensionColumn& column : columns) {
      std::string& name = names[std::string(column.name)] = column.name;
      if (column.unit == "in")
        name += unit_ == LengthUnit::millimetre ? "_mm" : "_in";
      else if (!column.unit.empty())
        name.append("_").append(column.unit);
    }
    add(names);
  }

  std::string length(const std::optional<double>& inches) const {
    if (!inches) return {};
    return sheet_length(*inches, unit_);
  }

  /// A gap, a stretch, a sag or a limit, which is a decimal whatever the unit.
  std::string margin(const std::optional<double>& inches) const {
    if (!inches) return {};
    return sheet_length(*inches, Phrasing{unit_}.decimals().unit);
  }

  void add(const Fields& fields) {
    bool first = true;
    for (const TensionColumn& column : columns) {
      if (!first) text_ += ',';
      first = false;
      const auto field = fields.find(column.name);
      if (field != fields.end()) text_ += csv_field(field->second);
    }
    text_ += '\n';
  }

  const std::string& text() const { return text_; }

 private:
  LengthUnit unit_;
  std::string text_;
};

void add_pilot(Fields& fields, const PilotPull& pilot) {
  fields["lever_ratio"] = number(pilot.lever_ratio, 4);
  fields["pilot_force"] = number(pilot.force_lbf, 2);
  fields["pilot_cable_load"] = number(pilot.pull_lbf, 2);
  fields["pilot_cable_tension"] = number(pilot.tension_lbf, 2);
  fields["pilot_strength_factor"] = number(pilot.strength_factor, 2);
  fields["breakout"] = number(pilot.breakout_lbf, 3);
  fields["breakout_all_cables"] = number(pilot.breakout_all_lbf, 3);
}

Fields cable_fields(const RiggedCable& cable, const Table& table) {
  Fields fields = {{"record", "cable"},
                   {"cable", cable.name},
                   {"line", cable.line},
                   {"control", cable.control},
                   {"from", cable.from},
                   {"to", cable.to},
                   {"length", table.length(cable.length_in)},
                   {"cut_length", table.length(cable.cut.cut_length_in)},
                   {"rigged_tension", number(cable.rigged_lbf, 2)},
                   {"minimum_rigged_tension", number(cable.minimum_rigged_lbf, 2)},
                   {"limit_load", number(cable.limit_load_lbf, 2)},
                   {"stretch_as_rigged", table.margin(cable.stretch_as_rigged_in)},
                   {"stretch_at_limit_load", table.margin(cable.stretch_at_limit_load_in)},
                   {"travel_lost", table.margin(cable.travel_lost_in)},
                   {"travel_lost_share", number(cable.travel_lost_share, 4)},
                   {"friction", number(cable.friction_lbf, 3)},
                   {"strength_factor", number(cable.strength_factor, 2)},
                   {"adjustment_each_way", table.margin(cable.cut.each_way_in)},
                   {"airframe_stiffness", number(cable.airframe_stiffness_lbf_per_in, 1)},
                   {"missing", fmt::format("{}", fmt::join(cable.missing, "; "))}};
  if (cable.slack_side) {
    fields["slack_side_tension"] = number(cable.slack_side->tension_lbf, 2);
    fields["slack_side_slack"] = table.margin(cable.slack_side->slack_in);
  }
  if (cable.pilot) add_pilot(fields, *cable.pilot);
  return fields;
}

Fields piece_fields(const RiggedCable& cable, const CablePiece& piece, const Table& table) {
  return {{"record", "piece"},
          {"cable", cable.name},
          {"from", piece.from},
          {"to", piece.to},
          {"cut_length", table.length(piece.cut_length_in)}};
}

Fields gap_fields(const RiggedCable& cable, const LeastGap& gap, const Table& table) {
  return {{"record", "gap"},
          {"cable", cable.name},
          {"rule", gap.rule},
          {"with", gap.with},
          {"gap", table.margin(gap.gap_in)},
          {"limit", table.margin(gap.limit_in)},
          {"distance", table.length(gap.distance_in)},
          {"verdict", std::string(verdict_word(gap.verdict))}};
}

Fields chart_fields(const RiggedCable& cable, const ChartRow& row, const Table& table) {
  return {{"record", "tension"},
          {"cable", cable.name},
          {"temperature", fixed_number(row.temperature_degf, 1)},
          {"tension", number(row.tension_lbf, 2)},
          {"slack", table.margin(row.slack_in)}};
}

Fields span_fields(const RiggedCable& cable, const RigSpan& span, int blades, const Table& table) {
  Fields fields = {{"record", "span"},
                   {"cable", cable.name},
                   {"from", span.from},
                   {"to", span.to},
                   {"span_from", table.length(span.from_in)},
                   {"span_to", table.length(span.to_in)},
                   {"sag", table.margin(span.sag_in)},
                   {"sag_at_load_factor", table.margin(span.sag_at_load_factor_in)},
                   {"natural_frequency", number(span.natural_frequency_hz, 3)}};
  for (const OrderMeeting& each : span.meetings) {
    if (each.times_per_turn == 1) fields["first_order"] = fixed_number(each.rpm, 1);
    if (each.times_per_turn == blades) fields["blade_order"] = fixed_number(each.rpm, 1);
  }
  return fields;
}

}  // namespace

std::string rig_csv(const Rig& rig, LengthUnit unit) {
  Table table(unit);
  for (const RiggedCable& cable : rig.cables) {
    table.add(cable_fields(cable, table));
    for (const CablePiece& piece : cable.cut.pieces) table.add(piece_fields(cable, piece, table));
    for (const ChartRow& row : cable.chart) table.add(chart_fields(cable, row, table));
    for (const RigSpan& span : cable.spans) table.add(span_fields(cable, span, rig.blades, table));
    for (const LeastGap& gap : cable.least_gaps) table.add(gap_fields(cable, gap, table));
  }
  return table.text();
}

}  // namespace linewright
