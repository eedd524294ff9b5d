#include "planning/rig.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "lines/motion/line_motion.hpp"
#include "physics/cable.hpp"
#include "physics/deflection.hpp"
#include "physics/pilot_force.hpp"
#include "physics/vibration.hpp"

namespace linewright {

namespace {

/// A multiple of the chart's step this near to another row would say the same twice.
constexpr double nearest_rows_degf = 0.05;

void miss(RiggedCable& cable, const std::string& what) {
  cable.missing.push_back(what);
}

/// Names everything that the line and the route leave open.
void add_missing(RiggedCable& cable, const PreparedRoute& prepared) {
  const Line& line = *prepared.line;
  const Route& route = *prepared.route;
  if (!route.tension) miss(cable, "its tension as rigged (tension.rigged)");
  if (!cable.limit_load_lbf) miss(cable, "its limit load (tension.limit_load)");
  if (route.lever && !pilot_force_lbf(route))
    miss(cable, "the pilot's limit force on its control (pilot_force)");
  if (!route.travel) miss(cable, "its travel (travel)");
  if (!line.axial_stiffness_lbf) miss(cable, "the stretch of " + line.name);
  if (!line.expansion_per_degf) miss(cable, "the thermal expansion of " + line.name);
  if (!line.weight_lb_per_in) miss(cable, "the weight of " + line.name);
  if (!line.breaking_strength_lbf) miss(cable, "the breaking strength of " + line.name);
  for (const std::string& each : cable.cut.missing) miss(cable, each);
  for (const std::string& each : cable.friction.missing) miss(cable, each);
}

void add_chart(RiggedCable& cable, const PreparedProject& prepared, const PreparedRoute& route,
               const CableState& state) {
  const TemperatureRange& range = prepared.project->temperature;
  const std::optional<TensionChange>& change = state.change;
  cable.airframe_stiffness_lbf_per_in = airframe_stiffness_lbf_per_in(prepared, route);
  for (const double degf : chart_temperatures(range)) {
    ChartRow row;
    row.temperature_degf = degf;
    row.as_rigged = degf == range.rigged_degf;
    if (cable.rigged_lbf && row.as_rigged) row.tension_lbf = cable.rigged_lbf;
    if (cable.rigged_lbf && change) {
      const double tension =
          *cable.rigged_lbf + change->slope_lbf_per_degf * (degf - range.rigged_degf);
      row.tension_lbf = std::max(0.0, tension);
      row.slack_in = thermal_slack_in(*change, tension);
    }
    row.over_strength =
        cable.is_rigged_over_strength() || (row.tension_lbf && cable.breaking_strength_lbf &&
                                            *row.tension_lbf > *cable.breaking_strength_lbf);
    if (row.over_strength) row.tension_lbf = row.slack_in = std::nullopt;
    cable.chart.push_back(row);
  }
  if (!change) return;
  cable.tension_slope_lbf_per_degf = change->slope_lbf_per_degf;
  const TensionRange extremes = tension_range(0, change->slope_lbf_per_degf, range);
  cable.minimum_rigged_lbf = std::max(0.0, -extremes.lowest_lbf);
  cable.slackest_degf = extremes.lowest_at_degf;
}

void add_stretch(RiggedCable& cable, const PreparedRoute& prepared, const CableState& state) {
  const std::optional<Travel>& travel = prepared.route->travel;
  if (travel) cable.smaller_travel_in = std::min(travel->forward_in, travel->aft_in);
  if (!prepared.line->axial_stiffness_lbf) return;
  const auto stretch = [&](const std::optional<double>& load_lbf) -> std::optional<double> {
    if (!load_lbf) return std::nullopt;
    return cable_stretch_in(*load_lbf,
                            {.length_in = cable.length_in,
                             .axial_stiffness_lbf = prepared.line->axial_stiffness_lbf->value});
  };
  if (!cable.is_rigged_over_strength()) cable.stretch_as_rigged_in = stretch(cable.rigged_lbf);
  const bool stands_rigging = !cable.is_rigged_over_strength();
  if (!cable.is_loaded_over_strength())
    cable.stretch_at_limit_load_in =
        stretch(stands_rigging && state.pulled_as_rigged_lbf ? state.pulled_as_rigged_lbf
                                                             : cable.limit_load_lbf);
  if (!cable.stretch_as_rigged_in || !cable.stretch_at_limit_load_in) return;
  cable.travel_lost_in = travel_lost_in(prepared, state);
  if (cable.smaller_travel_in && *cable.smaller_travel_in > 0)
    cable.travel_lost_share = *cable.travel_lost_in / *cable.smaller_travel_in;
}

void add_slack_side(RiggedCable& cable, const CableState& state) {
  if (!state.slack_side || cable.is_rigged_over_strength()) return;
  cable.slack_side = RigSlackSide{state.slack_side->pulled->route->name, state.slack_side->pull_lbf,
                                  state.slack_side->tension_lbf, state.slack_side->slack_in};
}

void add_pilot(RiggedCable& cable, const Route& route, const CableState& state) {
  if (!route.lever) return;
  PilotPull pilot;
  pilot.lever_ratio = route.lever->ratio;
  const PilotForce* row = pilot_forces_on(route);
  pilot.grip = row ? std::string(row->grip) : "the control";
  pilot.force_lbf = pilot_force_lbf(route);
  pilot.stated = route.lever->pilot_force_lbf.has_value();
  pilot.pull_lbf = pilot_pull_lbf(route);
  if (!cable.is_rigged_over_strength()) pilot.tension_lbf = state.pilot_pulled_lbf;
  if (pilot.tension_lbf && cable.breaking_strength_lbf)
    pilot.strength_factor = *cable.breaking_strength_lbf / *pilot.tension_lbf;
  if (cable.friction_lbf) pilot.breakout_lbf = *cable.friction_lbf / pilot.lever_ratio;
  cable.pilot = pilot;
}

/// A control moves all its cables at once: what is felt is the friction of all of them.
void add_breakout(std::vector<RiggedCable>& cables) {
  for (RiggedCable& cable : cables) {
    if (!cable.pilot) continue;
    double sum = 0;
    bool known = true;
    for (const RiggedCable& other : cables) {
      if (&other != &cable &&
          (cable.control.empty() || !is_same_control(other.control, cable.control)))
        continue;
      known = known && other.pilot && other.pilot->breakout_lbf;
      if (known) sum += *other.pilot->breakout_lbf;
    }
    if (known) cable.pilot->breakout_all_lbf = sum;
  }
}

OrderMeeting meeting(double frequency_hz, int times_per_turn, const Excitation& excitation) {
  const double rpm = meeting_rpm(frequency_hz, times_per_turn);
  return {times_per_turn, rpm, rpm >= excitation.idle_rpm && rpm <= excitation.redline_rpm};
}

RigSpan rig_span(const PreparedRoute& route, const Span& span, const SpanReach& reach,
                 const RiggedCable& cable, const std::optional<Excitation>& excitation) {
  RigSpan result;
  result.from_in = span.start_in;
  result.to_in = span.end_in;
  const auto holder = [&](int support) {
    return support < 0 ? std::string() : route.supports[static_cast<std::size_t>(support)].name;
  };
  result.from = holder(span.first);
  result.to = holder(span.last);
  const Line& line = *route.line;
  if (reach.ends_free || !cable.rigged_lbf || !line.weight_lb_per_in ||
      cable.is_rigged_over_strength())
    return result;
  const ReachEnvelope& envelope = reach.stretch.envelope;
  const double length = envelope.end_in - envelope.start_in;
  const double weight = line.weight_lb_per_in->value;
  result.sag_in = string_sag_in(
      {.length_in = length, .weight_lb_per_in = weight, .tension_lbf = *cable.rigged_lbf});
  result.sag_at_load_factor_in = reach.sag_unloaded_in;
  result.natural_frequency_hz = taut_string_frequency_hz(
      {.length_in = length, .weight_lb_per_in = weight, .tension_lbf = *cable.rigged_lbf});
  if (!excitation) return result;
  result.meetings.push_back(meeting(*result.natural_frequency_hz, 1, *excitation));
  if (excitation->blades > 1)
    result.meetings.push_back(
        meeting(*result.natural_frequency_hz, excitation->blades, *excitation));
  return result;
}

RiggedCable rig_cable(const PreparedProject& prepared, const PreparedRoute& route,
                      const CableState& state, const std::vector<SpanReach>& reaches) {
  const Project& project = *prepared.project;
  const Line& line = *route.line;
  RiggedCable cable;
  cable.name = route.route->name;
  cable.line = line.name;
  cable.from = route.from->name;
  cable.to = route.to->name;
  cable.control = route.route->control;
  cable.length_in = route.length_in();
  cable.cut = cable_cut(route, project.build_tolerance_in);
  if (route.route->tension) cable.rigged_lbf = route.route->tension->rigged_lbf;
  cable.limit_load_lbf = limit_load_lbf(*route.route);
  if (line.breaking_strength_lbf) cable.breaking_strength_lbf = line.breaking_strength_lbf->value;
  if (cable.limit_load_lbf && cable.breaking_strength_lbf)
    cable.strength_factor = *cable.breaking_strength_lbf / *cable.limit_load_lbf;
  cable.most_lbf = state.most_lbf();
  cable.friction = cable_friction(route);
  add_missing(cable, route);
  add_chart(cable, prepared, route, state);
  add_stretch(cable, route, state);
  add_slack_side(cable, state);
  if (cable.rigged_lbf && !cable.is_rigged_over_strength() && cable.friction.missing.empty())
    cable.friction_lbf = cable.friction.to_move_lbf(*cable.rigged_lbf);
  add_pilot(cable, *route.route, state);
  for (std::size_t i = 0; i < route.spans.size(); ++i) {
    cable.spans.push_back(rig_span(route, route.spans[i], reaches[i], cable, project.excitation));
    if (reaches[i].ends_free)
      miss(cable, "what holds the end of its span " + std::to_string(i + 1));
  }
  return cable;
}

std::string airframe_note(const std::vector<RiggedCable>& cables) {
  const auto rigid = [](const RiggedCable& cable) { return !cable.airframe_stiffness_lbf_per_in; };
  const std::string aluminium =
      fmt::format("aluminium airframe ({:.1f}e-6 per degF)", airframe_expansion_per_degf * 1e6);
  const std::string bound =
      " Real structure gives, so the change with temperature is an upper bound; "
      "airframe_stiffness says how far it gives.";
  if (std::all_of(cables.begin(), cables.end(), rigid))
    return "Tensions are those in a rigid " + aluminium + "." + bound;
  const std::string stated = "Tensions are those in an " + aluminium +
                             " of the stated stiffness, which all cables of a control share";
  if (std::none_of(cables.begin(), cables.end(), rigid)) return stated + ".";
  return stated + ", or in a rigid one where none is stated." + bound;
}

std::vector<std::string> notes(const std::vector<RiggedCable>& cables) {
  return {
      "Developed lengths run from node to node, the middles of their pins. Cut lengths are those "
      "of "
      "the unloaded pieces at the rigging temperature, turnbuckles at mid-adjustment, with what "
      "the "
      "ends hold; a new cable beds in by up to 1 % beyond that [verified in a restatement], unless "
      "it is prestretched.",
      airframe_note(cables),
      fmt::format("Friction is that of one cable at its rigged tension, without its own weight, "
                  "pedals, hinges and seals. Coefficients are common practice, no source: {:g} % "
                  "of the tension for "
                  "each quarter turn over a ball-bearing pulley, {:.2f} in fairleads, {:.2f} in "
                  "sleeves.",
                  100 * pulley_loss_per_quarter_turn, fairlead_friction, sleeve_friction),
      "The travel lost is what the limit pull stretches the cable beyond its rigged stretch, as a "
      "share of the smaller travel from neutral. What the airframe gives comes on top.",
      "Two cables of a control share its pull by their stiffness, the one gaining what the other "
      "loses, until the other is slack; from there the pulled one carries the pull alone "
      "[calculated: a closed loop, lever arms alike]. A cable whose second one is not known is "
      "taken to have one like it. The pilot's pull counts at the hottest, the slack side at the "
      "coldest. The sag under the load factor is that at the least tension over the temperatures, "
      "no load on the control. "
      "Friction and the joint factor 2.0 of 14 CFR 23.693, which is for the bearing of joints, are "
      "not in it."};
}

}  // namespace

std::vector<double> chart_temperatures(const TemperatureRange& range) {
  std::vector<double> rows{range.min_degf, range.rigged_degf, range.max_degf};
  const double first = std::ceil(range.min_degf / chart_step_degf);
  const double last = std::floor(range.max_degf / chart_step_degf);
  for (double step = first; step <= last; ++step) {
    const double degf = step * chart_step_degf + 0.0;  // never minus zero
    const bool said = std::any_of(rows.begin(), rows.begin() + 3, [&](double row) {
      return std::abs(row - degf) < nearest_rows_degf;
    });
    if (!said) rows.push_back(degf);
  }
  std::sort(rows.begin(), rows.end());
  rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
  return rows;
}

Rig plan_rig(const PreparedProject& prepared) {
  const Project& project = *prepared.project;
  Rig rig;
  rig.project_name = project.name;
  rig.temperature = project.temperature;
  rig.load_factor = project.load_factor.largest();
  if (project.excitation) rig.blades = project.excitation->blades;
  rig.assumptions = project.assumptions;
  for (std::string& sentence : wall_assumptions(prepared.walls))
    rig.assumptions.push_back(std::move(sentence));
  const LineMotion motion = motion_of(prepared);
  for (std::size_t i = 0; i < prepared.routes.size(); ++i)
    if (prepared.routes[i].line->kind == LineKind::cable)
      rig.cables.push_back(
          rig_cable(prepared, prepared.routes[i], motion.cables[i], motion.reaches[i]));
  add_breakout(rig.cables);
  if (!rig.cables.empty()) rig.notes = notes(rig.cables);
  return rig;
}

}  // namespace linewright
