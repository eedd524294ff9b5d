#pragma once
// Which structure counts as a neighbour of which part of a line. A line touches what its fittings
// are mounted on, and its frame crossings are judged by a rule of their own.

#include <map>

#include "lines/own_arm.hpp"
#include "lines/prepared.hpp"

namespace linewright {

/// A part this near to a held node is what the node is mounted on [common practice, no source].
inline constexpr double mount_distance_in = 0.5;
/// The part a node is mounted on does not count this far along the line from it
/// [common practice, no source].
inline constexpr double fitting_zone_in = 1.0;
/// The frame a line goes through does not count this far to both sides of its hole: there the
/// hole's edge is judged.
inline constexpr double crossing_zone_in = 1.0;
/// What of a mesh lies this near to a frame's web, on both sides, is that web once more
/// [common practice, no source].
inline constexpr double same_web_in = 0.1;

class NeighbourFilter {
 public:
  NeighbourFilter(const PreparedProject& prepared, const PreparedRoute& route);

  /// False for a part that an end of the route is mounted on, near that end and no nearer to the
  /// part than that end is. What moves holds nothing and always counts, but for a cable's own arm
  /// (own_arm.hpp) and the pulleys that the cable bears on (pulleys.hpp). One mesh may hold
  /// the whole aeroplane: of that only what lies by the node is what it is mounted on.
  bool counts(const Obstacle& obstacle, double distance_in) const;
  /// True where the obstacle's frame is being passed through; also for what of a mesh lies in the
  /// web of such a frame.
  bool crossing_near(const Obstacle& obstacle, double distance_in) const;
  /// True where it is passed through a hole that a grommet, trim or guide guards.
  bool guarded_crossing_near(const Obstacle& obstacle, double distance_in) const;
  /// True where it is passed through with no hole, which is a finding of its own. What of a mesh
  /// lies in the web may cover the hole, or draw its edge once more: there it is true of any
  /// passage.
  bool web_crossing_near(const Obstacle& obstacle, double distance_in) const;

 private:
  template <typename Counts>
  bool any_crossing_near(const Obstacle& obstacle, double distance_in, const Counts& counts) const;

  const PreparedProject& prepared_;
  const PreparedRoute& route_;
  OwnArms own_arms_;
  /// Parts an end is mounted on, by index: how near the end is to them and how far along the line
  /// they do not count.
  struct Mount {
    double node_distance_in = 0;
    double zone_in = 0;
  };
  using Mounts = std::map<int, Mount>;
  Mounts mounts_of(const Node& node) const;
  bool exempt(const Mounts& mounts, const Node& node, const Obstacle& obstacle, double distance_in,
              double from_end_in) const;

  Mounts mounts_at_from_;
  Mounts mounts_at_to_;
};

/// True for what of a mesh lies wholly in the frame's web, or within `same_web_in` of it.
bool lies_in_web(const Obstacle& obstacle, const Frame& frame);

/// True when the hole's edge, or a grommet, bushing or fairlead that the route has in it, keeps the
/// line off the metal. The guide's point must be at the crossing. Precondition: `crossing.hole`.
bool is_guarded(const PreparedRoute& route, const Crossing& crossing);

/// How far along the line a point that names a hole may be from where the line passes it.
inline constexpr double point_at_hole_in = 0.5;

}  // namespace linewright
