#pragma once
// The two ends of a push-pull control's casing, and where the wire in it goes beyond them.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "lines/arm_swing.hpp"
#include "lines/prepared.hpp"

namespace linewright {

/// So far past its last clamp a casing keeps its direction by its own stiffness
/// [common practice, no source].
inline constexpr double casing_tail_in = 2;

/// How far the wire moves in its casing from neutral.
struct WireTravel {
  double toward_from_in = 0;
  double toward_to_in = 0;
  /// What it surely moves to either side. Less than the larger of the two where the casing leaves
  /// its `from` square to FS: forward and aft then have no sense along it, and the larger of them
  /// counts both ways.
  std::optional<double> surely_in = {};
};

/// Nothing where the route states no travel.
std::optional<WireTravel> wire_travel(const PreparedRoute& route);

/// One end of the casing, and the wire that comes out of it.
struct CasingEnd {
  RouteEnd end = RouteEnd::from;
  const Node* node = nullptr;
  double distance_in = 0;      ///< along the route
  Vec3 out;                    ///< of unit length: the casing's own line, away from it
  double neutral_in = 0;       ///< how far the pin is from the casing, controls neutral
  double most_in = 0;          ///< pushed all the way out
  double least_in = 0;         ///< drawn all the way in; below zero: the pin would be in the casing
  double surely_least_in = 0;  ///< the same by what the wire surely moves
  std::optional<Arm> arm = {};  ///< what the pin goes round on

  /// Of the pin, controls neutral: straight on from the casing.
  Vec3 pin() const { return node->at + out * neutral_in; }
};

/// Both ends, that at `from` first; nothing for lines that are no casings, and where the travel or
/// the run-out is not stated.
std::optional<std::array<CasingEnd, 2>> casing_ends(const PreparedRoute& route);

/// What of the two is not stated: "the travel of throttle"; empty where both are.
std::string missing_of_casing(const PreparedRoute& route);

/// Places of a pin on its way that are looked at are no farther apart than this; so much more than
/// half of it is taken off every gap.
inline constexpr double pin_places_apart_in = 0.02;

/// Where the pin goes on its arm: as far from the casing's end as the wire stands out.
struct PinWay {
  bool reaches = true;        ///< the arm takes the pin as far as the travel says, both ways
  std::vector<Vec3> places;   ///< from all the way in to all the way out
  double stray_in = 0;        ///< no place of the way is farther than this from one of `places`
  double most_angle_deg = 0;  ///< the farthest that the wire leaves the line of its casing
};

/// The way of an end with an arm; an arm that cannot give the travel is taken as far as it goes.
/// Nothing without an arm, or where the pin lies on its axis.
std::optional<PinWay> pin_way(const CasingEnd& end);

}  // namespace linewright
