#pragma once
// Which structure counts as a neighbour of which part of a line. A line touches what its fittings
// are mounted on, and its frame crossings are judged by a rule of their own.

#include <set>

#include "geometry/prepared.hpp"

namespace linewright {

/// A part this near to a held node is what the node is mounted on [common practice, no source].
inline constexpr double mount_distance_in = 0.5;
/// The part a node is mounted on does not count this far along the line from it
/// [common practice, no source].
inline constexpr double fitting_zone_in = 1.0;
/// The frame a line goes through does not count this far to both sides of its hole: there the
/// hole's edge is judged.
inline constexpr double crossing_zone_in = 1.0;

class NeighbourFilter {
 public:
  NeighbourFilter(const PreparedProject& prepared, const PreparedRoute& route);

  /// False for a part that an end of the route is mounted on, near that end (for a part that moves:
  /// anywhere, the line goes with it).
  bool counts(const Obstacle& obstacle, double distance_in) const;
  /// True where the obstacle's frame is being passed through.
  bool crossing_near(const Obstacle& obstacle, double distance_in) const;
  /// True where it is passed through a hole that a grommet, trim or guide guards.
  bool guarded_crossing_near(const Obstacle& obstacle, double distance_in) const;

 private:
  const PreparedProject& prepared_;
  const PreparedRoute& route_;
  std::set<int> parts_at_from_;
  std::set<int> parts_at_to_;
};

/// True when the hole's edge, or a guide that the route has in it, keeps the line off the metal.
bool hole_is_guarded(const PreparedRoute& route, const Hole& hole);

}  // namespace linewright
