#pragma once
// The moving part that the end of a cable or rod is fixed to. It goes where the end goes, so near
// the end its sweep says nothing of how near the two come.

#include <vector>

#include "lines/prepared.hpp"
#include "model/angle.hpp"

namespace linewright {

/// An arm turns on a mover's axis where the arm's pivot lies this near to it
/// [common practice, no source].
inline constexpr double same_axis_within_in = 0.1;
/// And where the two axes lean from each other by no more than this, 1 degree, either way round
/// [common practice, no source].
inline constexpr double same_axis_within_rad = radians_of(1);

/// Of several movers on an arm's axis it is the one that comes nearest to its end, and those that
/// come no farther from it than by this more: two plates with the end between them [common
/// practice, no source].
inline constexpr double beside_own_in = 0.0625;

/// True where the arm turns on the mover's own axis.
bool turns_with(const Arm& arm, const Mover& mover);

/// A mover, and the pieces of its chain that the end of an arm is fixed to.
struct OwnPieces {
  const Mover* mover = nullptr;
  int part = 0;
  std::vector<int> pieces;
};

/// Of the movers that turn with the arm and are nearest to its end, as drawn: the pieces that come
/// within `mount_distance_in` of it.
std::vector<OwnPieces> pieces_fixed_to(const PreparedProject& prepared, const Arm& arm, Vec3 end);

/// How far a turn of the mover carries a place that goes with it: the chord 2 r sin(a/2), and for
/// more than half a turn the diameter.
double carried_in(const Mover& mover, Vec3 at, double turn_deg);

/// True where the drawn chain comes within `mount_distance_in` of a place.
bool is_on(const Mover& mover, Vec3 at);

/// True for the end of a cable on a horn or pedal, which structure holds only by what it turns on;
/// not where the cable is stated to have no travel.
bool end_moves(const PreparedRoute& route, const Node& node);
/// True where nobody knows how far such an end swings the cable: no arm is stated, or no travel.
bool swing_is_unknown(const PreparedRoute& route, const Node& node);

/// The movers that the ends of a cable are fixed to.
class OwnArms {
 public:
  /// For each end whose node states its arm: what that is fixed to. None for lines that are no
  /// cables.
  OwnArms(const PreparedProject& prepared, const PreparedRoute& route);

  /// True for such a piece, as far along the line from its end as the sweep carries the piece, and
  /// at the very end for all of that mover, which is one with it.
  bool pass_over(const Obstacle& obstacle, double distance_in) const;

 private:
  struct Arm {
    int part = 0;
    std::vector<int> pieces;
    double end_in = 0;   ///< along the route
    double zone_in = 0;  ///< from that end
  };
  std::vector<Arm> arms_;
};

}  // namespace linewright
