#include "geometry/structure/frame_faces.hpp"

#include <algorithm>
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

/// A polygon's corners lie between these two.
struct Extent {
  Vec2 low;
  Vec2 high;
};

Extent extent_of(const Polygon& polygon) {
  Extent extent{polygon.front(), polygon.front()};
  for (const Vec2 corner : polygon) {
    extent.low = {std::min(extent.low.u, corner.u), std::min(extent.low.v, corner.v)};
    extent.high = {std::max(extent.high.u, corner.u), std::max(extent.high.v, corner.v)};
  }
  return extent;
}

bool lie_apart(const Extent& a, const Extent& b) {
  return a.low.u > b.high.u || b.low.u > a.high.u || a.low.v > b.high.v || b.low.v > a.high.v;
}

/// A hole and what a guard needs round it.
struct FaceHole {
  Polygon as_cut;
  std::optional<Polygon> wider;   ///< as far as the guard's lip reaches; nothing where none is
  std::optional<Polygon> needed;  ///< with the least web round that
  Extent extent;                  ///< of the largest of them
};

FaceHole face_hole(const Hole& hole) {
  FaceHole face{edge_polygon(hole, obstacle_sagitta_in), {}, {}, {}};
  face.extent = extent_of(face.as_cut);
  if (!guards(hole.edge)) return face;
  face.wider = grown_hole(hole, trim_lip_in);
  if (face.wider) face.needed = grown_hole(hole, trim_lip_in + least_web_in);
  if (face.needed) face.extent = extent_of(*face.needed);
  return face;
}

/// True where the hole can be grown, whether the others are or not: of two that have no room
/// beside each other neither is, whichever is listed first.
bool has_room(const Polygon& outline, const std::vector<FaceHole>& holes, std::size_t own) {
  const std::optional<Polygon>& needed = holes[own].needed;
  if (!needed || !encloses(outline, *needed)) return false;
  for (std::size_t other = 0; other < holes.size(); ++other) {
    if (other == own || lie_apart(holes[own].extent, holes[other].extent)) continue;
    if (!apart(*needed, holes[other].as_cut)) return false;
    if (holes[other].wider && !apart(*needed, *holes[other].wider)) return false;
  }
  return true;
}

}  // namespace

std::vector<Polygon> face_holes(const Frame& frame) {
  std::vector<FaceHole> holes;
  for (const Hole& hole : frame.holes) holes.push_back(face_hole(hole));
  std::vector<Polygon> result;
  for (std::size_t i = 0; i < holes.size(); ++i)
    result.push_back(has_room(frame.outline, holes, i) ? *holes[i].wider : holes[i].as_cut);
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
