#pragma once
// An opening as a hole in whatever lies in its plane.

#include <vector>

#include "lines/prepared.hpp"

namespace linewright {

struct OpeningShape {
  const Opening* opening = nullptr;
  Vec3 centre;
  Vec3 normal;                ///< unit vector
  std::vector<Vec3> outline;  ///< a circle's: corners on it, so that no more is open than there is
  DrawnPlane plane = {};      ///< that it lies in
  std::vector<Vec2> in_plane = {};  ///< the outline there
  Vec2 least = {};                  ///< corners of the box about that
  Vec2 most = {};

  /// Half the width of the widest arm that goes through the middle.
  double clear_radius_in() const;
  /// The longest way across.
  double longest_across_in() const;
  /// True where the place, looked at along the normal, lies in the outline, no farther from its
  /// plane than `within_in`.
  bool holds(Vec3 place, double within_in) const;
  /// Bounds of all places that it holds within `opening_depth_in`.
  Bounds cuts_within() const;
  /// Distance to the outline's nearest edge.
  double edge_distance_in(Vec3 place) const;
};

/// A round opening that does not say which way it faces lies in the frame, panel or other wall that
/// its middle lies in; where there is none, it faces forward.
OpeningShape shape_of(const Opening& opening, const PreparedProject& prepared);

/// How far what an opening is cut into may lie off its plane [common practice, no source]: skins
/// are curved, and openings are measured with a tape.
inline constexpr double opening_depth_in = 1.0;

/// True where structure that stands still lies no farther than that from the middle of the opening
/// or its edge: what it is cut into, or what it is left between.
bool is_cut_into_something(const OpeningShape& shape, const PreparedProject& prepared);

}  // namespace linewright
