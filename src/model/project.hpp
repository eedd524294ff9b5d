#pragma once
// One project: everything its files say, as plain values in one unit system: inch, pound-force,
// degree Fahrenheit, degree of angle, psi.

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "model/closure.hpp"
#include "model/line.hpp"
#include "model/measurement.hpp"
#include "model/network.hpp"
#include "model/structure.hpp"

namespace linewright {

/// The temperatures the structure and its lines see.
struct TemperatureRange {
  double min_degf = 0;
  double rigged_degf = 0;
  double max_degf = 0;

  friend bool operator==(const TemperatureRange&, const TemperatureRange&) = default;
};

/// Nose-up pitch and right-wing-down roll in which water must drain.
struct Attitude {
  std::string name;
  double pitch_deg = 0;
  double roll_deg = 0;
  SourceLocation where;

  friend bool operator==(const Attitude&, const Attitude&) = default;
};

/// Propeller speeds that are held for long.
struct SpeedBand {
  double low_rpm = 0;
  double high_rpm = 0;

  friend bool operator==(const SpeedBand&, const SpeedBand&) = default;
};

struct Excitation {
  double idle_rpm = 0;
  double redline_rpm = 0;
  std::optional<SpeedBand> cruise;  ///< within idle and redline
  int blades = 0;
  SourceLocation where;

  friend bool operator==(const Excitation&, const Excitation&) = default;
};

struct LoadFactor {
  double positive = 0;
  double negative = 0;
  std::optional<SourceLocation> where = {};  ///< set where the project states it

  /// The larger of the two, in g, and never under the 1 g of standing still.
  double largest() const { return std::max({1.0, std::abs(positive), std::abs(negative)}); }

  friend bool operator==(const LoadFactor&, const LoadFactor&) = default;
};

struct Project {
  std::string name;
  double build_tolerance_in = 0;
  /// How far a measured place or gap may be from the true one; counts where `built` has any.
  double measuring_tolerance_in = 0;
  TemperatureRange temperature;
  LoadFactor load_factor;
  std::optional<double> climb_ft_per_min;
  std::optional<double>
      airframe_stiffness_lbf_per_in;  ///< for routes that state none; absent: rigid
  std::optional<bool> dual_controls;  ///< two pilots can pull at once; absent: one was taken
  std::optional<double> weight_lbf;   ///< at the most; absent: no more than 5,000 lbf was taken
  std::vector<Attitude> attitudes;
  std::optional<Excitation> excitation;
  Structure structure;
  std::vector<Closure> closures;
  std::vector<Task> tasks;
  std::vector<Node> nodes;
  std::vector<Route> routes;
  std::vector<Bundle> bundles;
  std::vector<Waiver> waivers;
  std::vector<Measurement> built;
  Catalogue catalogue;  ///< built-in lines and the project's own
  /// What the files did not say and the tool took instead, a sentence each; shown with every
  /// result, because a verdict rests on them.
  std::vector<std::string> assumptions;

  const Node* find_node(std::string_view wanted) const {
    for (const Node& node : nodes)
      if (node.name == wanted) return &node;
    return nullptr;
  }

  friend bool operator==(const Project&, const Project&) = default;
};

}  // namespace linewright
