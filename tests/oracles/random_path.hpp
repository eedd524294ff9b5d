#pragma once
// Paths and rigid motions from a fixed seed, the same on every machine.

#include <cmath>
#include <cstdint>
#include <numbers>
#include <random>
#include <vector>

#include "geometry/centreline.hpp"

namespace linewright::oracles {

/// Uniform numbers, points and directions. The standard distributions may differ between
/// libraries, so the numbers are taken from the engine's bits.
class Random {
 public:
  explicit Random(std::uint64_t seed) : engine_(seed) {}

  double between(double lo, double hi) {
    return lo + (hi - lo) * static_cast<double>(engine_() >> 11) * 0x1p-53;
  }
  int whole(int lo, int hi) {
    return lo + static_cast<int>(engine_() % static_cast<std::uint64_t>(hi - lo + 1));
  }
  Vec3 point(double half_width) {
    return {between(-half_width, half_width), between(-half_width, half_width),
            between(-half_width, half_width)};
  }
  Vec3 direction() {
    for (;;) {
      const Vec3 candidate = point(1);
      const double length = norm(candidate);
      if (length > 0.1 && length <= 1) return candidate / length;
    }
  }

 private:
  std::mt19937_64 engine_;
};

/// A path of `corner_count` corners in space whose bends, of 2 to 150 degrees and 0.5 to 3 in
/// radius, all fit with up to 8 in of straight between them.
inline std::vector<PathCorner> fitting_path(Random& random, int corner_count) {
  std::vector<PathCorner> corners{{random.point(100), 0}};
  Vec3 direction = random.direction();
  double tangent_in = 0;
  for (int i = 1; i < corner_count; ++i) {
    Vec3 next = direction;
    double angle_rad = 0;
    while (angle_rad < 2 * std::numbers::pi / 180 || angle_rad > 150 * std::numbers::pi / 180) {
      next = random.direction();
      angle_rad = std::acos(dot(direction, next));
    }
    const bool last = i + 1 == corner_count;
    const double radius_in = last ? 0 : random.between(0.5, 3);
    const double next_tangent_in = radius_in * std::tan(angle_rad / 2);
    const double leg_in = tangent_in + next_tangent_in + random.between(0.01, 8);
    corners.push_back({corners.back().at + direction * leg_in, radius_in});
    direction = next;
    tangent_in = next_tangent_in;
  }
  return corners;
}

/// A path through random points, whose bends may or may not fit.
inline std::vector<PathCorner> crowded_path(Random& random, int corner_count) {
  std::vector<PathCorner> corners;
  for (int i = 0; i < corner_count; ++i)
    corners.push_back({random.point(5), random.whole(0, 4) == 0 ? 0 : random.between(0.1, 4)});
  return corners;
}

/// A turn about a random axis followed by a shift.
class RigidMotion {
 public:
  explicit RigidMotion(Random& random)
      : axis_(random.direction()),
        angle_rad_(random.between(-std::numbers::pi, std::numbers::pi)),
        shift_(random.point(50)) {}

  Vec3 turn(Vec3 vector) const {
    const Vec3 along = axis_ * dot(axis_, vector);
    const Vec3 across = vector - along;
    return along + across * std::cos(angle_rad_) + cross(axis_, across) * std::sin(angle_rad_);
  }
  Vec3 move(Vec3 point) const { return turn(point) + shift_; }

  std::vector<PathCorner> move(std::vector<PathCorner> corners) const {
    for (PathCorner& corner : corners) corner.at = move(corner.at);
    return corners;
  }

 private:
  Vec3 axis_;
  double angle_rad_;
  Vec3 shift_;
};

}  // namespace linewright::oracles
