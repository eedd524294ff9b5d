#pragma once
// What heat, cold and the pull of its control make of each cable's tension, worked out once.

#include <optional>
#include <string>
#include <vector>

#include "lines/motion/tension_change.hpp"
#include "lines/prepared.hpp"
#include "physics/cable.hpp"

namespace linewright {

/// A cable while another one of its control is pulled to the limit.
struct SlackSide {
  double tension_lbf = 0;
  double slack_in = 0;  ///< left over of its whole length; above zero only without tension
  const PreparedRoute* pulled = nullptr;
  double pull_lbf = 0;  ///< on that one
};

struct CableState {
  std::optional<TensionChange> change;  ///< with temperature; nothing where it is not known
  std::optional<TensionRange> range;    ///< nothing where `change` or the rigged tension is not
  /// The ends of that range, or the rigged tension where its change is not known; zero where it is
  /// not stated. Below zero: slack.
  double coldest_lbf = 0;
  double hottest_lbf = 0;
  double coldest_slack_in = 0;  ///< left over of the whole length at the coldest
  /// At the lowest tension of both (physics/cable.hpp gives the model), beside the cable of the
  /// same control whose pull leaves it the least. A pull that is not known of that one is taken as
  /// large as its own. Nothing where no other cable works the control, or a tension, stiffness or
  /// both pulls are not known.
  std::optional<SlackSide> slack_side;
  /// "the rigged tension of NAME": what keeps the pull of another cable of its control from being
  /// reckoned with, so that it may be left with less than `slack_side`; empty where all are.
  std::string missing_beside;
  /// Its own tension while it is pulled to the limit, at the rigging temperature; nothing where no
  /// pull or its rigged tension is not known.
  std::optional<double> pulled_as_rigged_lbf;
  /// The same under the pilot's pull, at the highest tension of all cables of the control.
  std::optional<double> pilot_pulled_lbf;

  /// The highest of its tensions that are known, with heat and under the limit pull; nothing where
  /// its rigged tension is not.
  std::optional<double> most_lbf() const;
};

/// What is left over of the cable's whole length at a tension that heat or cold leaves it; nothing
/// is left over of a taut one.
double thermal_slack_in(const TensionChange& change, double tension_lbf);

/// What the limit pull stretches the cable by beyond its rigged stretch, at the rigging
/// temperature; nothing where a figure for it is not known. What the airframe gives comes on top.
std::optional<double> travel_lost_in(const PreparedRoute& route, const CableState& state);

/// One for each route of the project, in its order; of lines that are no cables an empty one.
std::vector<CableState> cable_states(const PreparedProject& prepared);

}  // namespace linewright
