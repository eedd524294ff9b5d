#include <algorithm>
#include <cmath>

#include "geometry/plane/polygon.hpp"

namespace linewright {
namespace {

double signed_area(const std::vector<Vec2>& polygon) {
  double sum = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i)
    sum += cross(polygon[i] - polygon[0], polygon[(i + 1) % polygon.size()] - polygon[0]);
  return sum / 2;
}

std::vector<Vec2> anticlockwise(std::vector<Vec2> polygon) {
  polygon.erase(std::unique(polygon.begin(), polygon.end()), polygon.end());
  while (polygon.size() > 1 && polygon.front() == polygon.back()) polygon.pop_back();
  if (signed_area(polygon) < 0) std::reverse(polygon.begin(), polygon.end());
  return polygon;
}

/// Unit normal to the right of an edge: outwards where the polygon turns anticlockwise.
Vec2 outward(Vec2 from, Vec2 to) {
  const Vec2 along = (to - from) * (1 / distance(from, to));
  return {along.v, -along.u};
}

/// The corner between two moved edges: where they meet if it points inwards, else an arc.
void append_corner(std::vector<Vec2>& result, Vec2 corner, Vec2 arriving, Vec2 leaving,
                   double by_in, double sagitta_in) {
  const double angle_rad = std::atan2(cross(arriving, leaving), dot(arriving, leaving));
  if (angle_rad <= 0) {
    result.push_back(corner + (arriving + leaving) * (by_in / (1 + dot(arriving, leaving))));
    return;
  }
  const double widest_rad = 2 * std::acos(std::clamp(1 - sagitta_in / by_in, 0.0, 1.0));
  const int chords = std::max(1, static_cast<int>(std::ceil(angle_rad / widest_rad)));
  for (int i = 0; i <= chords; ++i) {
    const double turn_rad = angle_rad * i / chords;
    const Vec2 across{-arriving.v, arriving.u};
    result.push_back(corner +
                     (arriving * std::cos(turn_rad) + across * std::sin(turn_rad)) * by_in);
  }
}

}  // namespace

std::optional<std::vector<Vec2>> grown(const std::vector<Vec2>& polygon, double by_in,
                                       double sagitta_in) {
  const std::vector<Vec2> corners = anticlockwise(polygon);
  const std::size_t count = corners.size();
  if (count < 3) return std::nullopt;
  std::vector<Vec2> result;
  for (std::size_t i = 0; i < count; ++i) {
    const Vec2 before = corners[(i + count - 1) % count];
    const Vec2 after = corners[(i + 1) % count];
    append_corner(result, corners[i], outward(before, corners[i]), outward(corners[i], after),
                  by_in, sagitta_in);
  }
  // Edges that have swallowed a neighbour cross it, or meet it too far from where they came from.
  const auto too_far = [&](Vec2 point) {
    return !(edge_distance(corners, point) <= by_in * (1 + 1e-9));
  };
  if (!is_simple_polygon(result) || std::any_of(result.begin(), result.end(), too_far) ||
      !encloses(result, corners))
    return std::nullopt;
  return result;
}

}  // namespace linewright
