#pragma once
// A channel's section, carried along its path.

#include <array>
#include <cmath>
#include <vector>

#include "model/channel_axis.hpp"
#include "model/vector.hpp"

namespace linewright {

/// One leg of a channel's path with the section square to it. Its ends are cut in the planes that
/// halve the corners there, or square where the channel ends.
struct ChannelLeg {
  Vec3 from;
  Vec3 to;
  Vec3 along;   ///< of unit length, as the next two: square to each other
  Vec3 across;  ///< where the section's first coordinate runs
  Vec3 up;      ///< where its second runs
  Vec3 start_normal;
  Vec3 end_normal;

  /// From the path to a corner of the section, square to the leg.
  Vec3 square(Vec2 corner) const { return across * corner.u + up * corner.v; }
  /// Where a corner of the section begins and ends on this leg.
  Vec3 start_of(Vec2 corner) const { return cut(from + square(corner), from, start_normal); }
  Vec3 end_of(Vec2 corner) const { return cut(to + square(corner), to, end_normal); }
  /// How far it runs between the two; not over zero where the section folds over itself.
  double length_in(Vec2 corner) const { return dot(end_of(corner) - start_of(corner), along); }

 private:
  /// Along the leg from `place` to the plane through `at`.
  Vec3 cut(Vec3 place, Vec3 at, Vec3 normal) const {
    return place - along * (dot(place - at, normal) / dot(along, normal));
  }
};

/// What is square to `from`, turned with it the short way to `to`; both of unit length and not
/// opposite.
inline Vec3 turned_with(Vec3 square, Vec3 from, Vec3 to) {
  return square - (from + to) * (dot(square, to) / (1 + dot(from, to)));
}

/// Legs nearer than this to turning right back have no plane that halves their corner.
inline constexpr double least_corner_cosine = -0.999;

/// The legs of a path, no two neighbours at one place. The section is drawn
/// across the path's main axis: it is turned the short way to stand square to the leg that goes
/// most along that axis, of several the first, and from there round each corner. Empty where the
/// path turns right back on itself, or has no leg.
inline std::vector<ChannelLeg> channel_legs(const std::vector<Vec3>& path) {
  std::vector<ChannelLeg> legs;
  for (std::size_t i = 0; i + 1 < path.size(); ++i) {
    const Vec3 along = unit(path[i + 1] - path[i]);
    if (!legs.empty() && dot(legs.back().along, along) < least_corner_cosine) return {};
    legs.push_back({path[i], path[i + 1], along, {}, {}, along, along});
  }
  if (legs.empty()) return legs;
  const std::size_t axis = main_axis_of(path);
  const auto share = [axis](const ChannelLeg& leg) {
    return std::array{leg.along.x, leg.along.y, leg.along.z}[axis];
  };
  std::size_t drawn = 0;
  for (std::size_t i = 1; i < legs.size(); ++i)
    if (std::abs(share(legs[i])) > std::abs(share(legs[drawn])) + 1e-9) drawn = i;

  constexpr std::array<Vec3, 3> axes{Vec3{1, 0, 0}, Vec3{0, 1, 0}, Vec3{0, 0, 1}};
  const Vec3 main = axes[axis] * (share(legs[drawn]) < 0 ? -1.0 : 1.0);
  legs[drawn].across = turned_with(axes[axis == 0 ? 1 : 0], main, legs[drawn].along);
  legs[drawn].up = turned_with(axes[axis == 2 ? 1 : 2], main, legs[drawn].along);
  const auto carry = [&legs](std::size_t from, std::size_t to) {
    legs[to].across = turned_with(legs[from].across, legs[from].along, legs[to].along);
    legs[to].up = turned_with(legs[from].up, legs[from].along, legs[to].along);
  };
  for (std::size_t i = drawn; i > 0; --i) carry(i, i - 1);
  for (std::size_t i = drawn; i + 1 < legs.size(); ++i) carry(i, i + 1);
  for (std::size_t i = 0; i + 1 < legs.size(); ++i)
    legs[i].end_normal = legs[i + 1].start_normal = unit(legs[i].along + legs[i + 1].along);
  return legs;
}

}  // namespace linewright
