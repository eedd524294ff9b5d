#include "geometry/structure/frame_faces.hpp"

#include <cmath>
#include <optional>

#include "geometry/structure/obstacles.hpp"

namespace linewright {
namespace {

using Polygon = std::vector<Vec2>;

/// Web that must be left round a grown hole: shapes that all but touch cannot be tiled soundly.
constexpr double least_web_in = 0.001;

std::optional<Polygon> grown_hole(const Hole& hole, double by_in) {
  const auto* circle = std::get_if<Circle>(&hole.shape);
  if (circle == nullptr) return grown(std::get<Polygon>(hole.shape), by_in, obstacle_sagitta_in);
  Hole wider = hole;
  wider.shape = Circle{circle->centre, circle->diameter_in + 2 * by_in};
  return edge_polygon(wider, obstacle_sagitta_in);
}

bool has_room(const Polygon& hole, const Polygon& outline, const std::vector<Polygon>& holes,
              std::size_t own) {
  if (!encloses(outline, hole)) return false;
  for (std::size_t other = 0; other < holes.size(); ++other)
    if (other != own && !apart(hole, holes[other])) return false;
  return true;
}

}  // namespace

std::vector<Polygon> face_holes(const Frame& frame) {
  std::vector<Polygon> result;
  for (const Hole& hole : frame.holes) result.push_back(edge_polygon(hole, obstacle_sagitta_in));
  for (std::size_t i = 0; i < result.size(); ++i) {
    const Hole& hole = frame.holes[i];
    if (!guards(hole.edge)) continue;
    const auto needed = grown_hole(hole, trim_lip_in + least_web_in);
    const auto wider = grown_hole(hole, trim_lip_in);
    if (needed && wider && has_room(*needed, frame.outline, result, i)) result[i] = *wider;
  }
  return result;
}

std::vector<std::array<Vec2, 3>> face_triangles(const Frame& frame) {
  const std::vector<Polygon> holes = face_holes(frame);
  const auto web = triangulate(frame.outline, holes);
  double unaccounted_in2 = area(frame.outline);
  for (const Polygon& hole : holes) unaccounted_in2 -= area(hole);
  for (const auto& triangle : web) unaccounted_in2 -= area({triangle.begin(), triangle.end()});
  const bool tiled = std::abs(unaccounted_in2) <= 1e-6 * area(frame.outline);
  return tiled ? web : triangulate(frame.outline, {});
}

}  // namespace linewright
