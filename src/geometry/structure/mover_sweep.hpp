#pragma once
// A bellcrank or horn in every position it can take, as swollen segments.

#include <vector>

#include "geometry/distance.hpp"
#include "model/structure.hpp"

namespace linewright {

/// How far a moving point may be from its nearest drawn position before more positions are drawn.
inline constexpr double sweep_stray_in = 0.005;
/// Most steps one segment's sweep is cut into. A sweep that would need more is swollen by more.
inline constexpr int most_sweep_steps = 400;

/// A segment and everything within `radius_in` of it.
struct SweptSegment {
  Segment3 segment;
  double radius_in = 0;
  int piece = 0;  ///< which segment of the chain it is, counted from zero
};

/// `point` turned about the line through `pivot` along `axis` (not zero), right-hand rule.
Vec3 turned(Vec3 point, Vec3 pivot, Vec3 axis, double angle_rad);

/// The mover's chain, each segment at enough positions from one end of the sweep to the other that
/// the swollen segments together contain the mover at every angle between. Drawn position: 0 deg.
///
/// The swelling beyond the mover's own radius: between two positions a step apart, no place is
/// more than half a step of angle from one of them. A point at r from the axis that turns by an
/// angle a moves along a chord of 2 r sin(a/2), so it strays at most 2 r sin(step/4) from where it
/// is drawn. Along a straight segment the distance from the axis is largest at an end, so that r
/// is the larger of the two ends'.
std::vector<SweptSegment> sweep(const Mover& mover);

}  // namespace linewright
