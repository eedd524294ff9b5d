#include "geometry/frame_faces.hpp"

#include <optional>

#include "geometry/obstacles.hpp"

namespace linewright {
namespace {

std::optional<std::vector<Vec2>> grown_hole(const Hole& hole) {
  const auto* circle = std::get_if<Circle>(&hole.shape);
  if (circle == nullptr)
    return grown(std::get<std::vector<Vec2>>(hole.shape), trim_lip_in, obstacle_sagitta_in);
  Hole wider = hole;
  wider.shape = Circle{circle->centre, circle->diameter + 2 * trim_lip_in};
  return edge_polygon(wider, obstacle_sagitta_in);
}

}  // namespace

std::vector<std::vector<Vec2>> face_holes(const Frame& frame) {
  std::vector<std::vector<Vec2>> result;
  for (const Hole& hole : frame.holes) result.push_back(edge_polygon(hole, obstacle_sagitta_in));
  for (std::size_t i = 0; i < result.size(); ++i) {
    if (!guards(frame.holes[i].edge)) continue;
    const auto wider = grown_hole(frame.holes[i]);
    bool fits = wider && encloses(frame.outline, *wider);
    for (std::size_t other = 0; fits && other < result.size(); ++other)
      fits = other == i || apart(*wider, result[other]);
    if (fits) result[i] = *wider;
  }
  return result;
}

}  // namespace linewright
