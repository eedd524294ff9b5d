#pragma once
// What a cable rubs on along its run, and the drag of it all.

#include <string>
#include <vector>

#include "lines/prepared.hpp"

namespace linewright {

/// Coefficients of friction [common practice, no source]: the upper end of what is usual for nylon
/// or phenolic fairleads and for polyethylene or nylon sleeves.
inline constexpr double fairlead_friction = 0.25;
inline constexpr double sleeve_friction = 0.20;
/// Share of its tension that a cable loses for each quarter turn over a ball-bearing pulley
/// [common practice, no source].
inline constexpr double pulley_loss_per_quarter_turn = 0.02;

enum class GuideKind { pulley, fairlead, sleeve };

/// A place where the cable turns in a guide. Grommets and bushings rub as fairleads do.
struct GuidedTurn {
  GuideKind kind = GuideKind::fairlead;
  double at_in = 0;   ///< along the route
  std::string guide;  ///< "fairlead in F4-b", "pulley", "sleeve"
  double turn_rad = 0;
  double ratio = 1;  ///< tension on the pulled side over that on the other, while it moves
};

struct CableFriction {
  std::vector<GuidedTurn> turns;     ///< in order along the route
  std::vector<std::string> missing;  ///< what is not known of the guides, in words

  /// Of all turns, one after the other: the capstan equation's product.
  double ratio() const;
  /// What it takes to move the cable at a tension, beyond what is pulled at its other end.
  double to_move_lbf(double tension_lbf) const { return tension_lbf * (ratio() - 1); }
  double turn_rad(GuideKind kind) const;
};

/// The turns of a cable and what guides each. A corner that no pulley, fairlead, grommet, bushing
/// or sleeve stands at, and a clamp, are listed as missing.
CableFriction cable_friction(const PreparedRoute& route);

}  // namespace linewright
