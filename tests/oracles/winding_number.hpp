#pragma once
// How often a polygon turns about a point, by adding up the angles its edges subtend.

#include <cmath>
#include <numbers>
#include <vector>

#include "model/vector.hpp"

namespace linewright::oracles {

/// Meaningless for a point on the edge.
inline int winding_number(const std::vector<Vec2>& polygon, Vec2 point) {
  double angle_rad = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vec2 from = polygon[i] - point;
    const Vec2 to = polygon[(i + 1) % polygon.size()] - point;
    angle_rad += std::atan2(cross(from, to), dot(from, to));
  }
  return static_cast<int>(std::lround(angle_rad / (2 * std::numbers::pi)));
}

/// Area by the shoelace formula, positive where the polygon turns anticlockwise.
inline double shoelace_area(const std::vector<Vec2>& polygon) {
  double sum = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i)
    sum += cross(polygon[i], polygon[(i + 1) % polygon.size()]);
  return sum / 2;
}

}  // namespace linewright::oracles
