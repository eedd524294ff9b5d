#include "lines/access/room.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "geometry/plane/polygon.hpp"

namespace linewright {

namespace {

/// To the edge of the opening that the place on the part lies in.
double cut_edge_in(const CoveredPart& covered, Vec3 on_part, Vec3 place) {
  double most_in = 0;
  for (const OpeningShape* opening : covered.openings)
    if (opening->holds(on_part, opening_depth_in))
      most_in = std::max(most_in, opening->edge_distance_in(place));
  return most_in;
}

/// A frame's web with its holes and the openings cut into it.
class Web {
 public:
  Web(const Frame& frame, const CoveredPart& covered) : frame_(frame), covered_(covered) {}

  /// In the frame's plane.
  double distance_in(Vec2 place) const {
    if (!covers(frame_.outline, place)) return edge_distance(frame_.outline, place);
    double free_in = 0;
    for (const Hole& hole : frame_.holes)
      if (covers(hole, place)) free_in = std::max(free_in, edge_distance(hole, place));
    const Vec3 there = frame_.plane.in_space(place);
    return std::max(free_in, cut_edge_in(covered_, there, there));
  }
  double beside_in(Vec3 place) const {
    return std::max(0.0, std::abs(frame_.plane.above(place)) - frame_.thickness_in / 2);
  }

 private:
  const Frame& frame_;
  const CoveredPart& covered_;
};

/// Parts begin with the frames.
const Frame* frame_of(const PreparedProject& prepared, int part) {
  const std::vector<Frame>& frames = prepared.project->structure.frames;
  const auto index = static_cast<std::size_t>(part);
  return index < frames.size() ? &frames[index] : nullptr;
}

double obstacle_distance_in(const Obstacle& obstacle, const CoveredPart& covered, Vec3 place) {
  const Nearest near = nearest(place, obstacle);
  if (!is_cut_out(covered, near.on_second)) return std::max(0.0, near.distance_in);
  return cut_edge_in(covered, near.on_second, place);
}

void lower(float& value, double to) {
  value = std::min(value, static_cast<float>(to));
}

void take_frame(Room& room, const Frame& frame, const CoveredPart& covered) {
  const Web web(frame, covered);
  const DrawnPlane& plane = frame.plane;
  const auto limit_in = static_cast<double>(room.limit_in);
  Bounds bounds = empty_bounds();
  for (const Vec2 corner : frame.outline) include(bounds, plane.in_space(corner));
  bounds = grown(bounds, limit_in + frame.thickness_in);
  const CellGrid& grid = room.grid;
  // Most frames stand at a station: along FS all cells see the same place of theirs.
  std::optional<Vec2> seen;
  double in_plane_in = 0;
  grid.visit(bounds, [&](const std::array<int, 3>& cell, std::size_t index) {
    const Vec3 middle = grid.middle(cell);
    const double beside_in = web.beside_in(middle);
    if (beside_in >= limit_in) return;
    const Vec2 here = plane.seen(middle);
    if (seen != here) {
      seen = here;
      in_plane_in = web.distance_in(here);
    }
    lower(room.free_in[index], std::hypot(in_plane_in, beside_in));
  });
}

/// A bound that rounding may put wrong by less than this.
constexpr double bound_rounding_in = 1e-6;

/// True where one of the openings may be cut into what lies in the bounds.
bool may_be_cut(const CoveredPart& covered, const Bounds& bounds) {
  return std::any_of(covered.openings.begin(), covered.openings.end(),
                     [&](const OpeningShape* opening) {
                       return least_distance(opening->cuts_within(), bounds) <= bound_rounding_in;
                     });
}

void take_obstacles(Room& room, const PreparedProject& prepared, int part,
                    const CoveredPart& covered) {
  for (const Obstacle& obstacle : prepared.obstacles.of_part(part)) {
    if (obstacle.feature == Feature::hole_edge) continue;
    const Bounds own = grown(bounds_of(obstacle), obstacle.radius_in);
    const bool cut = may_be_cut(covered, own);
    const Bounds bounds = grown(own, static_cast<double>(room.limit_in));
    room.grid.visit(bounds, [&](const std::array<int, 3>& cell, std::size_t index) {
      const Vec3 middle = room.grid.middle(cell);
      float& free_in = room.free_in[index];
      if (cut)
        lower(free_in, obstacle_distance_in(obstacle, covered, middle));
      else if (least_distance(own, {middle, middle}) <=
               static_cast<double>(free_in) + bound_rounding_in)
        lower(free_in, std::max(0.0, nearest(middle, obstacle).distance_in));
    });
  }
}

/// Cells that a triangle may come through: those whose middle is no farther from it than their
/// corners are.
void mark_triangle(const CellGrid& grid, const Triangle3& triangle, const CoveredPart& covered,
                   std::vector<std::uint32_t>& marked) {
  const double within_in = grid.half_diagonal_in();
  grid.visit(grown(bounds_of(triangle), within_in),
             [&](const std::array<int, 3>& cell, std::size_t index) {
               const Nearest near = nearest(grid.middle(cell), triangle);
               if (near.distance_in <= within_in && !is_cut_out(covered, near.on_second))
                 marked.push_back(static_cast<std::uint32_t>(index));
             });
}

void take_mesh(Room& room, const MeshField& field, const CoveredPart& covered) {
  const CellGrid& grid = room.grid;
  const Vec3 size{grid.count[0] * grid.cell_in, grid.count[1] * grid.cell_in,
                  grid.count[2] * grid.cell_in};
  const Bounds all{grid.origin, grid.origin + size};
  std::vector<std::uint32_t> marked;
  field.visit_triangles(field.cells_near(all, 0), [&](const Triangle3& triangle) {
    mark_triangle(grid, triangle, covered, marked);
  });
  std::sort(marked.begin(), marked.end());
  marked.erase(std::unique(marked.begin(), marked.end()), marked.end());
  // A cell's triangle may lie as near to a neighbour as the corner that they share.
  const double corner_in = grid.half_diagonal_in();
  const double about_in = static_cast<double>(room.limit_in) + corner_in;
  for (const std::uint32_t each : marked) {
    const Vec3 middle = grid.middle(each);
    grid.visit(grown(Bounds{middle, middle}, about_in),
               [&](const std::array<int, 3>& cell, std::size_t index) {
                 const double distance_in = distance(grid.middle(cell), middle);
                 lower(room.free_in[index], std::max(0.0, distance_in - corner_in));
               });
  }
}

}  // namespace

bool is_cut_out(const CoveredPart& covered, Vec3 on_part) {
  return std::any_of(
      covered.openings.begin(), covered.openings.end(),
      [&](const OpeningShape* opening) { return opening->holds(on_part, opening_depth_in); });
}

std::vector<CoveredPart> covered_parts(const PreparedProject& prepared,
                                       const std::vector<OpeningShape>& openings) {
  const std::vector<Part>& parts = prepared.obstacles.parts();
  std::vector<CoveredPart> covered(parts.size());
  const auto cover = [&](const std::string& name, const std::string& closure) {
    if (const auto part = prepared.obstacles.find_part(name))
      covered[static_cast<std::size_t>(*part)].closures.insert(closure);
  };
  for (const Closure& closure : prepared.project->closures)
    for (const std::string& name : closure.covers) cover(name, closure.name);
  for (const Panel& panel : prepared.project->structure.panels)
    if (!panel.closure.empty()) cover(panel.name, panel.closure);
  std::size_t next = 0;
  for (const Closure& closure : prepared.project->closures)
    for (std::size_t i = 0; i < closure.openings.size(); ++i, ++next)
      for (CoveredPart& part : covered)
        if (part.closures.empty() || part.closures.contains(closure.name))
          part.openings.push_back(&openings[next]);
  return covered;
}

bool stands_in_the_way(const Part& part) {
  return part.kind != PartKind::mover && part.kind != PartKind::pulley &&
         part.kind != PartKind::fitting;
}

double part_distance_in(const PreparedProject& prepared, int part, const CoveredPart& covered,
                        Vec3 place, double limit_in) {
  if (const Frame* frame = frame_of(prepared, part)) {
    const Web web(*frame, covered);
    const double beside_in = web.beside_in(place);
    if (beside_in >= limit_in) return limit_in;
    return std::min(limit_in, std::hypot(beside_in, web.distance_in(frame->plane.seen(place))));
  }
  double least_in = limit_in;
  for (const Obstacle& obstacle : prepared.obstacles.of_part(part))
    if (obstacle.feature != Feature::hole_edge)
      least_in = std::min(least_in, obstacle_distance_in(obstacle, covered, place));
  return least_in;
}

void Room::take(const PreparedProject& prepared, int part, const CoveredPart& covered) {
  if (const Frame* frame = frame_of(prepared, part)) return take_frame(*this, *frame, covered);
  for (const MeshPartField& mesh : prepared.obstacles.meshes())
    if (mesh.part == part && mesh.field) return take_mesh(*this, *mesh.field, covered);
  take_obstacles(*this, prepared, part, covered);
}

}  // namespace linewright
