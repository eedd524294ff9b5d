#pragma once
// How the end of a cable swings sideways on the arm of its horn or pedal.

#include <optional>
#include <vector>

#include "lines/prepared.hpp"

namespace linewright {

enum class RouteEnd { from, to };

/// Where the leg between the end and its nearest guide goes at both ends of the travel. Inches.
struct ArmSwing {
  int guide = -1;    ///< index of the guide among the route's points; -1: the route has none
  Vec3 start;        ///< where the leg leaves the guide
  Vec3 toward_from;  ///< the end, with the cable moved all the way toward the route's `from`
  Vec3 toward_to;    ///< and toward its `to`
  /// The farthest that the end comes off the drawn leg, or the leg drawn on, on its way.
  double sideways_in = 0;
  /// And the nearest that it comes to the guide, along the drawn leg, short of its drawn place.
  double inward_in = 0;
  bool reaches = true;  ///< the arm can move the cable through all of its travel
  /// The most that the arm can move the cable toward the route's `from`, and toward its `to`.
  double gives_toward_from_in = 0;
  double gives_toward_to_in = 0;
};

/// The nearest to an end of the route's points that hold or lead the line; -1 where none does.
int end_guide(const PreparedRoute& route, RouteEnd end);

/// The end goes round the arm's axis until it is as much nearer to its guide, or farther from it,
/// as the cable travels, which is exact where the leg leaves a fairlead. On a pulley the leg is
/// taken to leave from where it does at neutral. An arm that cannot turn so far is taken to where
/// it can pull no farther. Nothing for lines that are no cables, and where the end's arm or the
/// cable's travel is not stated.
std::optional<ArmSwing> arm_swing(const PreparedRoute& route, RouteEnd end);

/// Every place of an end on its way, from one end of the travel to the other.
struct EndWay {
  Vec3 start;  ///< where the leg leaves the guide
  std::vector<Vec3> places;
  double stray_in = 0;  ///< no place of the way is farther than this from one of `places`
};

/// The way of `arm_swing`, its places no farther apart than `apart_in`.
std::optional<EndWay> end_way(const PreparedRoute& route, RouteEnd end, double apart_in);

/// Which way the cable runs before and after one of the route's points: unit vectors.
struct LegDirections {
  Vec3 before;
  Vec3 after;
};

/// As drawn; and, where an arm swings one of the two legs or both, at each end of the travel. An
/// arm that cannot give the travel swings nothing: where it takes its leg is not known.
std::vector<LegDirections> leg_directions(const PreparedRoute& route, int point);

}  // namespace linewright
