#pragma once
// What a fitting stands on, and which of it does not count near that fitting. This is the one place
// that passes structure over near a line's end; its reasons can each be said in a sentence.

#include <optional>
#include <vector>

#include "lines/arm_swing.hpp"
#include "lines/prepared.hpp"

namespace linewright {

/// A face this near to a held node can be what the node stands on [common practice, no source].
inline constexpr double mount_distance_in = 0.5;
/// What a node stands on does not count this far along the line from it [common practice, no
/// source].
inline constexpr double fitting_zone_in = 1.0;
/// What a fitting stands on is skin and doubler, no thicker than this; the fitting fills as much of
/// the line [common practice, no source].
inline constexpr double mount_depth_in = 0.125;
/// A line leaves what its fitting stands on at no less than this slope, or is clear of it half an
/// inch from the fitting: the sine of 30 degrees [common practice, no source].
inline constexpr double least_leaving_slope = 0.5;

/// Why something near a fitting does not count.
enum class SeatReason {
  counts,       ///< it does
  stands_on,    ///< the fitting stands on this face, and the line leaves it or is clear of it
  left_behind,  ///< an edge or another face beside the fitting, from which the line leads away
};

/// One end of a route. Everything is decided for the whole of the zone, so that it does not matter
/// into which pieces the line is cut.
class FittingSeat {
 public:
  FittingSeat(const PreparedProject& prepared, const PreparedRoute& route, RouteEnd end);

  /// What holds for the obstacle at `from_end_in` along the line from this end.
  ///
  /// A face is passed over where the node stands over it, nearest of its part, it lies within
  /// `mount_depth_in` of one plane with the nearest place (the other diagonal of a panel that is
  /// not flat within `mount_distance_in`), and the line comes no nearer to it than its first
  /// `mount_depth_in` does, and from there on is clear of it or leaves it at `least_leaving_slope`.
  /// Anything else within `mount_distance_in` is passed over only where the line leads away from it
  /// at that slope from the first, and it is the edge of a hole about the node or the line's
  /// surface does not lie over it; so is a face that the node is edge on to. Moving parts count:
  /// `OwnArms` has what goes with a cable. The end of a cable that goes with an arm stands on
  /// nothing.
  SeatReason reason(const Obstacle& obstacle, double from_end_in) const;

  const Node& node() const { return *node_; }

 private:
  /// Where a part is nearest to the node.
  struct Face {
    Obstacle nearest;
    double node_distance_in = 0;   ///< of the node to the part
    double mount_distance_in = 0;  ///< the same of the line's first `mount_depth_in`
    Vec3 foot;
    std::optional<Vec3> normal;  ///< unit; nothing for bodies, on which there is no edge on
    bool stands_over = true;
  };

  bool stands() const;
  void take_chords(RouteEnd end);
  void find_faces();
  bool consider_face(const Obstacle& obstacle);
  double first_distance_in(const Obstacle& obstacle) const;
  double rest_distance_in(const Obstacle& obstacle) const;
  bool is_same_face(const Face& face, const Obstacle& obstacle) const;
  double beside_face_in(const Face& face, const Obstacle& obstacle) const;
  bool comes_clear(const Face& face, const Obstacle& obstacle) const;
  bool is_left_behind(const Obstacle& obstacle) const;
  bool lies_about_node(const Obstacle& obstacle) const;

  const PreparedProject* prepared_;
  const PreparedRoute* route_;
  const Node* node_;
  double zone_in_ = 0;
  double radius_in_ = 0;
  std::vector<PathChord> first_;  ///< the line's first `mount_depth_in`, from the node outward
  std::vector<PathChord> rest_;   ///< from there to the end of the zone
  Vec3 zone_end_;
  std::vector<Face> faces_;
  /// Directions from the node to sharp edges of meshes that lie within the line's surface.
  std::vector<Vec3> mesh_edges_;
};

}  // namespace linewright
