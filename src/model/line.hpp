#pragma once
// What a route is made of, and what holds it: the entries of the catalogue.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/fitting.hpp"
#include "model/source.hpp"

namespace linewright {

enum class LineKind { rigid_tube, plastic_tube, hose, cable, wire, rod, conduit };

/// True for what moves along itself to work a control. The casing of a push-pull control stands
/// still about the wire that does.
constexpr bool works_control(LineKind kind) {
  return kind == LineKind::cable || kind == LineKind::rod;
}

/// A tube, hose, cable, wire bundle, pushrod or casing by the catalogue. Inches, pounds, psi,
/// degrees Fahrenheit. An absent optional means "not known": a rule that needs it answers
/// `unknown`.
struct Line {
  std::string name;
  LineKind kind = LineKind::plastic_tube;
  std::string material;  ///< "aluminium", "steel", "nylon", "polyethylene", "rubber", "copper"…
  std::string construction;  ///< cables: "7x7", "7x19", "1x19"; empty otherwise

  double outside_diameter_in = 0;
  double inside_diameter_in = 0;            ///< 0 for cables, wires, casings and solid rods
  std::optional<double> plus_tolerance_in;  ///< how much larger than nominal it may be
  Source size_source;

  std::optional<SourcedValue> minimum_bend_radius_in;  ///< to the centreline
  std::optional<SourcedValue>
      flexing_bend_radius_in;                  ///< hoses: where it flexes; to the centreline
  std::optional<double> usual_bend_radius_in;  ///< used where a point states no bend
  std::optional<SourcedValue> support_spacing_in;
  std::optional<SourcedValue> weight_lb_per_in;
  std::optional<SourcedValue> youngs_modulus_psi;  ///< tubes and hoses
  std::optional<SourcedValue> expansion_per_degf;
  std::optional<SourcedValue>
      slack_fraction;  ///< surplus length a careful builder leaves, / length
  std::optional<SourcedValue> bend_total_deg;  ///< casings: most that all bends turn together
  std::optional<SourcedValue> breaking_strength_lbf;  ///< cables
  std::optional<SourcedValue> axial_stiffness_lbf;    ///< cables: AE
  double cut_allowance_in = 0;                        ///< both ends together, trimmed off later
  /// Lengths that it is sold in; empty where they are not known.
  std::vector<SourcedValue> stock_lengths_in = {};

  std::optional<SourceLocation> where;  ///< set when the project defines the line

  /// Largest real outside diameter, inches; the nominal one where no tolerance is known.
  double largest_diameter_in() const { return outside_diameter_in + plus_tolerance_in.value_or(0); }
  double largest_radius_in() const { return largest_diameter_in() / 2; }

  friend bool operator==(const Line&, const Line&) = default;
};

/// A cushion clamp: it holds lines of one nominal diameter.
struct ClampSize {
  std::string name;  ///< "clamp-4"
  int dash = 0;
  double nominal_diameter_in = 0;
  Source source;

  friend bool operator==(const ClampSize&, const ClampSize&) = default;
};

/// Everything that can be named as a `line`, the clamps that fit, and fittings.
struct Catalogue {
  std::vector<Line> lines;
  std::vector<ClampSize> clamps;
  std::vector<Fitting> fittings;

  /// The line called `name`, or nullptr.
  const Line* find_line(std::string_view name) const {
    for (const Line& line : lines)
      if (line.name == name) return &line;
    return nullptr;
  }

  /// The fitting called `name`, or nullptr.
  const Fitting* find_fitting(std::string_view name) const {
    for (const Fitting& fitting : fittings)
      if (fitting.name == name) return &fitting;
    return nullptr;
  }

  friend bool operator==(const Catalogue&, const Catalogue&) = default;
};

}  // namespace linewright
