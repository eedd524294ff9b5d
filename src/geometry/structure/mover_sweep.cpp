#include "geometry/structure/mover_sweep.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace linewright {
namespace {

double distance_from_axis(Vec3 point, const Mover& mover) {
  return norm(cross(unit(mover.axis), point - mover.pivot));
}

int steps_needed(double sweep_rad, double arm_in) {
  if (sweep_rad == 0 || 2 * arm_in <= sweep_stray_in) return sweep_rad == 0 ? 0 : 1;
  const double widest_step_rad = 4 * std::asin(sweep_stray_in / (2 * arm_in));
  const double needed = std::ceil(sweep_rad / widest_step_rad);
  return static_cast<int>(std::clamp(needed, 1.0, static_cast<double>(most_sweep_steps)));
}

/// See `sweep` in the header.
double stray_in(double step_rad, double arm_in) {
  // Steps of a whole turn or more can put a point opposite both of its drawn positions.
  return 2 * arm_in * std::sin(std::min(step_rad / 4, std::numbers::pi / 2));
}

void append_sweep(std::vector<SweptSegment>& swept, const Mover& mover, const Segment3& drawn,
                  int piece) {
  constexpr double radians = std::numbers::pi / 180;
  const double from_rad = std::min(mover.sweep_from_deg, mover.sweep_to_deg) * radians;
  const double to_rad = std::max(mover.sweep_from_deg, mover.sweep_to_deg) * radians;
  const double arm_in =
      std::max(distance_from_axis(drawn.a, mover), distance_from_axis(drawn.b, mover));
  const int steps = steps_needed(to_rad - from_rad, arm_in);
  const double step_rad = steps == 0 ? 0 : (to_rad - from_rad) / steps;
  const double radius_in = mover.radius_in + stray_in(step_rad, arm_in);
  for (int step = 0; step <= steps; ++step) {
    const double angle_rad = from_rad + step * step_rad;
    const auto at_angle = [&](Vec3 p) { return turned(p, mover.pivot, mover.axis, angle_rad); };
    swept.push_back({{at_angle(drawn.a), at_angle(drawn.b)}, radius_in, piece});
  }
}

}  // namespace

Vec3 turned(Vec3 point, Vec3 pivot, Vec3 axis, double angle_rad) {
  const Vec3 along = unit(axis);
  const Vec3 arm = point - pivot;
  const Vec3 on_axis = along * dot(along, arm);
  // Rodrigues' formula, split into the part along the axis and the part that turns.
  return pivot + on_axis + (arm - on_axis) * std::cos(angle_rad) +
         cross(along, arm) * std::sin(angle_rad);
}

std::vector<SweptSegment> sweep(const Mover& mover) {
  std::vector<SweptSegment> swept;
  const std::vector<Vec3>& points = mover.points;
  if (points.size() == 1) append_sweep(swept, mover, {points.front(), points.front()}, 0);
  for (std::size_t i = 0; i + 1 < points.size(); ++i)
    append_sweep(swept, mover, {points[i], points[i + 1]}, static_cast<int>(i));
  return swept;
}

}  // namespace linewright
