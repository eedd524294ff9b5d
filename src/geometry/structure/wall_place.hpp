#pragma once
// The wall of a channel, panel or box that a hole goes through.

#include <optional>

#include "geometry/structure/obstacles.hpp"

namespace linewright {

/// A hole is described at the wall's surface or within it, give or take what a ruler misses
/// [common practice, no source].
inline constexpr double at_wall_in = 0.0625;

/// A wall's middle plane, at one place of it.
struct WallPlace {
  Vec3 middle;
  Vec3 normal;
  double thickness_in = 0;
};

/// The wall's middle plane, its origin at the place.
DrawnPlane wall_plane(const WallPlace& place);

/// The box as a board, between the pair of faces that `at` is nearest to among those no farther
/// apart than a board is thick; nothing where there are none, or `at` is farther than `within_in`
/// outside of the box.
std::optional<WallPlace> board_place(const Box& box, Vec3 at, double within_in);

/// The flat wall that a triangle of a channel or panel is part of, at the place nearest to `at`.
WallPlace plate_place(const Obstacle& obstacle, Vec3 at);

}  // namespace linewright
