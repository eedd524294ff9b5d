#pragma once
// Where a pushrod between two arms goes: a rod keeps its length, so where its `from` end is says
// where its `to` end is.

#include <string>
#include <vector>

#include "lines/prepared.hpp"

namespace linewright {

/// The rod at one place of its travel.
struct RodPlace {
  Vec3 from;
  Vec3 to;
  double from_rad =
      0;              ///< how far the arm at the route's `from` has turned, by the right-hand rule
  double to_rad = 0;  ///< the same of the arm at its `to`; whole turns mean nothing
};

/// Why it cannot be told where a rod goes.
enum class RodFault {
  none,
  unstated,        ///< an arm, or the travel
  from_too_short,  ///< the arm at `from` cannot go as far as the travel
  cannot_follow,  ///< somewhere on the way the arm at `to` comes over centre, or within 0.01 degree
};

struct RodWay {
  RodFault fault = RodFault::none;
  std::string missing;  ///< "the arm of horn-1"; empty where the way is known
  /// In order from where the rod is all the way toward its `from`: both ends of the travel, and
  /// places between.
  std::vector<RodPlace> places;
  /// No point of the rod is ever farther than this from where it is at one of the places: a bound
  /// on what lies between them, by the arcs that the arms describe.
  double stray_in = 0;
};

/// Bounds between places are no wider than this; so much is taken off every gap.
inline constexpr double most_stray_in = 0.01;

/// The way of a rod whose ends go round the arms of its two nodes. Its `from` end goes as far along
/// the drawn rod as the travel says, to both sides; the other end is where the rod's length leaves
/// it, on the side of its arm where it is drawn. That an arm can follow is shown for the whole of
/// the way, not for places of it. Precondition: the route's line is a rod.
RodWay rod_way(const PreparedRoute& route);

/// The most that the arm at a rod's `from` can move its end along the drawn rod: toward `from`, and
/// toward `to`. Precondition: both nodes have an arm.
Movement arm_gives(const PreparedRoute& route);

/// How far the rod is from standing in line with the nearer to that of its two arms, degrees: at
/// none the arm is on dead centre, at 90 it is square to the rod.
double off_dead_centre_deg(const PreparedRoute& route, const RodPlace& place);

/// The least tilt, degrees, that the worse of the rod's two end bearings takes at a place. Their
/// bolts lie along the axes of the arms, the bearings are set square to each other as drawn, and
/// the rod rolls about itself to share between the two what their bolts then twist.
double end_tilt_deg(const PreparedRoute& route, const RodPlace& place);

}  // namespace linewright
