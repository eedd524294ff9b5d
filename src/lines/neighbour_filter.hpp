#pragma once
// Which structure counts as a neighbour of which part of a line. A line touches what its fittings
// are mounted on, and its frame crossings are judged by a rule of their own.

#include <string>
#include <vector>

#include "lines/fitting_seat.hpp"
#include "lines/own_arm.hpp"

namespace linewright {

/// The frame a line goes through does not count this far to both sides of its hole: there the
/// hole's edge is judged.
inline constexpr double crossing_zone_in = 1.0;
/// What of a mesh lies this near to a frame's web, on both sides, is that web once more
/// [common practice, no source].
inline constexpr double same_web_in = 0.1;
/// What of that stands no farther inside a described hole than this is the hole's edge once more
/// [common practice, no source].
inline constexpr double same_edge_in = 0.0625;

class NeighbourFilter {
 public:
  NeighbourFilter(const PreparedProject& prepared, const PreparedRoute& route);

  /// False near an end of the route for what its fitting stands on or leads away from: see
  /// `FittingSeat::reason`; for the fitting that it ends at itself; and for the part that a cable's
  /// end goes with, and the pulleys that it bears on.
  bool counts(const Obstacle& obstacle, double distance_in) const;
  /// Why not, in a sentence; empty where it counts.
  std::string why_passed_over(const Obstacle& obstacle, double distance_in) const;
  /// True where the obstacle's frame, or its wall round a hole, is being passed through; also for
  /// what of a mesh is the web of such a frame once more. What stands in the hole deeper than its
  /// edge is not, unless a guide fills the hole, or the mesh covers the middle of the line: then it
  /// leaves the hole out, and `frame-crossing` says so. Of a rod that moves
  /// the hole always counts; what is round it does not as far along as the travel takes the rod.
  bool crossing_near(const Obstacle& obstacle, double distance_in) const;
  /// True where it is passed through a hole that a grommet, trim or guide guards.
  bool guarded_crossing_near(const Obstacle& obstacle, double distance_in) const;
  /// True where it is passed through with no hole, which is a finding of its own, and for the wall
  /// round a hole, in whose place the hole's inside counts. What of a mesh
  /// is the web once more may cover the hole, or draw its edge: there it is true of any
  /// passage.
  bool web_crossing_near(const Obstacle& obstacle, double distance_in) const;

 private:
  enum class Why {
    counts,
    bears_on_it,
    bears_beside_it,
    goes_with_it,
    ends_at_it,
    stands_on_it,
    leaves_it_behind,
  };
  struct Reason {
    Why why = Why::counts;
    const Node* node = nullptr;  ///< of the fitting that stands on it or leaves it behind
  };
  Reason reason(const Obstacle& obstacle, double distance_in) const;

  template <typename Counts>
  bool any_crossing_near(const Obstacle& obstacle, double distance_in, const Counts& counts) const;

  /// True for what of a mesh is the crossing's web once more, at a place along the line.
  bool is_once_more(const Obstacle& obstacle, const Crossing& crossing, double distance_in) const;
  /// Meshes, by their parts, that cover the hole where the middle of the line goes through.
  std::vector<int> covering(const Crossing& crossing) const;

  const PreparedProject& prepared_;
  const PreparedRoute& route_;
  OwnArms own_arms_;
  FittingSeat at_from_;
  FittingSeat at_to_;
  double slides_in_ = 0;  ///< rods: more than how far the crossings can be from where it is drawn
  std::vector<std::vector<int>> covering_;  ///< of each of the route's crossings
};

/// How far inside the crossing's hole a place stands from its edge; zero outside. Precondition:
/// `crossing.hole`.
double depth_in_hole_in(const Crossing& crossing, Vec3 place);

/// True where a guide, grommet or bushing goes all round the line in the hole and guards it: what a
/// mesh shows there is that fitting. Precondition: `crossing.hole`.
bool is_filled(const PreparedRoute& route, const Crossing& crossing);

/// True for what of a mesh lies wholly in the frame's web, or within `same_web_in` of it.
bool lies_in_web(const Obstacle& obstacle, const Frame& frame);

}  // namespace linewright
