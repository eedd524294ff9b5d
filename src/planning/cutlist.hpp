#pragma once
// What to cut and how to bend it: developed lengths, bend schedules, bore volumes and masses.

#include <optional>
#include <string>
#include <vector>

#include "lines/prepared.hpp"

namespace linewright {

/// One bend in the order it is made, from the route's `from` end.
struct BendStep {
  Vec3 at;                 ///< the corner as drawn
  double distance_in = 0;  ///< along the line, middle of the arc
  double radius_in = 0;    ///< to centreline, as drawn
  double angle_deg = 0;    ///< how far the line turns
  /// How far the tube is turned about itself after the bend before, right-hand rule with the thumb
  /// toward the `from` end, which is bent already, in (-180, 180]; 0 for the first.
  double rotation_deg = 0;
  double straight_before_in = 0;  ///< from the end of the arc before, or from the end of the tube
  double mark_start_in = 0;       ///< marks on the straight tube: where the arc starts and ends
  double mark_end_in = 0;
};

struct RouteCut {
  std::string name;
  std::string system;
  std::string line;
  bool rigid = false;             ///< bent on a tool before it is fitted
  bool cable = false;             ///< cut in pieces and finished at its ends: `rig` says how
  bool casing = false;            ///< of a push-pull control: led in place, not bent on a tool
  double length_in = 0;           ///< developed, along the filleted centreline
  double cut_length_in = 0;       ///< with the allowance trimmed off later
  double volume_in3 = 0;          ///< of the bore
  std::optional<double> mass_lb;  ///< absent where the weight is not known
  /// Of the wire in a casing, from pin to pin; absent where its run-out is not stated.
  std::optional<double> wire_length_in;
  std::vector<BendStep> bends;
  double straight_after_in = 0;  ///< after the last bend
  /// Points that the line is drawn to turn at, and is not bent at: `straightened_words`.
  std::vector<int> straightened;
  std::optional<double> minimum_bend_radius_in;
};

struct SystemCut {
  std::string name;
  double length_in = 0;
  double volume_in3 = 0;  ///< bores and nodes
  /// Nodes of an air system whose volume the project does not state: counted as nothing.
  std::vector<std::string> nodes_without_volume;
};

struct CutList {
  std::vector<RouteCut> routes;
  std::vector<SystemCut> systems;
};

/// "straight at its points 2, 5: a straight line misses them by less than the build tolerance";
/// empty where the line is bent wherever it is drawn to turn.
std::string straightened_words(const RouteCut& cut);

/// The cut list of every route, in file order, and of every system, in order of first use.
CutList cut_list(const PreparedProject& prepared);

/// The corners a bend schedule leads to: starts at `start` along `direction`, the first bend in
/// the plane that holds `direction` and `first_bend_towards`. The schedule read backwards, so that
/// it can be checked.
std::vector<Vec3> corners_from_schedule(const RouteCut& cut, Vec3 start, Vec3 direction,
                                        Vec3 first_bend_towards);

}  // namespace linewright
