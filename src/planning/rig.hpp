#pragma once
// What a rigger needs of each control cable: length, tension at the temperature of the day,
// stretch, friction, strength, and how each span between guides sags and swings.

#include <optional>
#include <string>
#include <vector>

#include "lines/cable_friction.hpp"
#include "lines/prepared.hpp"
#include "planning/cable_cut.hpp"
#include "planning/least_gap.hpp"

namespace linewright {

/// A row of the tension chart.
struct ChartRow {
  double temperature_degf = 0;
  std::optional<double> tension_lbf;  ///< zero where it is slack
  std::optional<double> slack_in;     ///< how much too long it is there
  bool as_rigged = false;
  bool over_strength = false;  ///< it would break: no figure
};

/// The propeller speed at which something that shakes `times_per_turn` times in a turn meets a
/// frequency.
struct OrderMeeting {
  int times_per_turn = 1;
  double rpm = 0;
  bool in_range = false;  ///< between idle and redline
};

/// The cable between two guides, or from one to an end that nothing holds.
struct RigSpan {
  double from_in = 0;  ///< along the route
  double to_in = 0;
  std::string from;  ///< what holds it there; empty for nothing
  std::string to;
  std::optional<double> sag_in;  ///< at 1 g, as rigged
  std::optional<double>
      sag_at_load_factor_in;                   ///< at the largest load factor and coldest, unloaded
  std::optional<double> natural_frequency_hz;  ///< as rigged
  /// First order, then blade order where there is more than one blade; none where the project
  /// states no excitation.
  std::vector<OrderMeeting> meetings;
};

/// What the pilot can pull on a cable at the limit, where the route gives its lever ratio.
struct PilotPull {
  double lever_ratio = 1;
  std::string grip;  ///< "the rudder pedal"; "the control" where it is not known
  std::optional<double> force_lbf;
  bool stated = false;  ///< the builder's force, not that of the table
  std::optional<double> pull_lbf;
  std::optional<double> tension_lbf;  ///< of the pulled cable at the most, rigged tension counted
  std::optional<double> strength_factor;   ///< breaking strength over that tension
  std::optional<double> breakout_lbf;      ///< friction of this cable as felt at the grip
  std::optional<double> breakout_all_lbf;  ///< of all cables of the control
};

/// What the pull of another cable of the control leaves in this one at the coldest.
struct RigSlackSide {
  std::string pulled;  ///< the other cable
  double pull_lbf = 0;
  double tension_lbf = 0;
  double slack_in = 0;  ///< of the whole length
};

/// Where a tension or load is over the breaking strength, the figures that it would give are left
/// out: a cable that breaks has none.
struct RiggedCable {
  std::string name;
  std::string line;
  std::string from;
  std::string to;
  std::string control;
  double length_in = 0;  ///< developed, from node to node
  CableCut cut;
  std::optional<double> rigged_lbf;
  std::optional<double> limit_load_lbf;
  std::optional<double> airframe_stiffness_lbf_per_in;  ///< nothing: rigid
  std::optional<double> tension_slope_lbf_per_degf;
  std::vector<ChartRow> chart;
  std::optional<double> minimum_rigged_lbf;  ///< that leaves it just taut over all temperatures
  std::optional<double> slackest_degf;       ///< the temperature that asks for it
  std::optional<double> stretch_as_rigged_in;
  std::optional<double> stretch_at_limit_load_in;  ///< with what is left of its own tension
  std::optional<double> travel_lost_in;     ///< stretch that the limit pull adds to the rigged
  std::optional<double> travel_lost_share;  ///< of the smaller stated travel from neutral
  std::optional<double> smaller_travel_in;
  std::optional<RigSlackSide> slack_side;
  CableFriction friction;
  std::optional<double> friction_lbf;  ///< pull above the rigged tension that makes it move
  std::optional<double> breaking_strength_lbf;
  std::optional<double> strength_factor;  ///< breaking strength over limit load
  std::optional<PilotPull> pilot;
  /// Through its travel, a rule each; left empty by `plan_rig`, for the rules to fill.
  std::vector<LeastGap> least_gaps;
  std::vector<RigSpan> spans;
  std::vector<std::string> missing;  ///< what is not known, in words
  /// The most that it is known to carry, which its guides bear as it turns in them.
  std::optional<double> most_lbf;

  bool is_rigged_over_strength() const {
    return rigged_lbf && breaking_strength_lbf && *rigged_lbf > *breaking_strength_lbf;
  }
  bool is_loaded_over_strength() const {
    return limit_load_lbf && breaking_strength_lbf && *limit_load_lbf > *breaking_strength_lbf;
  }
};

struct Rig {
  std::string project_name;
  TemperatureRange temperature;
  double load_factor = 1;           ///< the largest of either sign
  int blades = 0;                   ///< 0: no excitation is stated
  std::vector<RiggedCable> cables;  ///< in file order
  std::vector<std::string> assumptions;
  std::vector<std::string> notes;  ///< what the figures hold for, a sentence each
};

/// Steps of the tension chart.
inline constexpr double chart_step_degf = 10;

/// Temperatures of the chart: both ends of the range, the rigging temperature and every multiple of
/// the step between, rising.
std::vector<double> chart_temperatures(const TemperatureRange& range);

/// The rig of every cable of the project. The airframe is aluminium, and rigid where no stiffness
/// is stated, which makes the change of tension an upper bound. Friction is that of one cable
/// alone, without hinges, pedals and seals.
Rig plan_rig(const PreparedProject& prepared);

}  // namespace linewright
