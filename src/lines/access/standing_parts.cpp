#include "lines/access/standing_parts.hpp"

#include <algorithm>
#include <cmath>

#include "lines/access/way_in.hpp"

namespace linewright {

namespace {

/// How deep in a part the place of what is mounted in it may lie.
constexpr double in_part_in = 0.5;
/// A straight way is tried at steps of this.
constexpr double sight_step_in = 0.25;

bool is_fitted(const CoveredPart& part, const std::set<std::string>& closed) {
  return part.closures.empty() ||
         std::any_of(part.closures.begin(), part.closures.end(),
                     [&](const std::string& name) { return closed.contains(name); });
}

}  // namespace

double needed_in(double width_in, const CellGrid& grid) {
  return std::hypot(width_in / 2, grid.half_diagonal_in());
}

StandingParts::StandingParts(const PreparedProject& prepared,
                             const std::vector<CoveredPart>& covered,
                             const std::set<std::string>& closed)
    : prepared_(prepared), covered_(covered) {
  const std::vector<Part>& parts = prepared.obstacles.parts();
  for (std::size_t i = 0; i < parts.size(); ++i)
    stands_.push_back(stands_in_the_way(parts[i]) && is_fitted(covered[i], closed) ? 1 : 0);
}

double StandingParts::free_in(Vec3 place, double limit_in) const {
  std::set<int> near;
  prepared_.obstacles.visit(grown(Bounds{place, place}, limit_in), [&](const Obstacle& obstacle) {
    if (stands(static_cast<std::size_t>(obstacle.part))) near.insert(obstacle.part);
  });
  double least_in = limit_in;
  for (const int part : near)
    least_in = std::min(
        least_in, part_distance_in(prepared_, part, covered_[static_cast<std::size_t>(part)], place,
                                   least_in));
  return least_in;
}

bool StandingParts::is_open_between(Vec3 from, Vec3 to) const {
  const double length_in = distance(from, to);
  const bool in_part = free_in(to, 1.0) <= 0;
  if (!in_part) return !crosses(from, to);
  if (length_in <= in_part_in) return true;
  return !crosses(from, between(from, to, 1 - in_part_in / length_in));
}

bool StandingParts::crosses_mesh(const Segment3& segment) const {
  for (const MeshPartField& mesh : prepared_.obstacles.meshes()) {
    const auto part = static_cast<std::size_t>(mesh.part);
    if (!mesh.field || !stands(part)) continue;
    const auto item = mesh.field->nearest_item(segment, 0);
    if (item && !is_cut_out(covered_[part], nearest(segment, item->shape).on_second)) return true;
  }
  return false;
}

bool StandingParts::crosses(Vec3 from, Vec3 to) const {
  const Segment3 segment{from, to};
  Bounds bounds{from, from};
  include(bounds, to);
  bool crossed = crosses_mesh(segment);
  prepared_.obstacles.visit(bounds, [&](const Obstacle& obstacle) {
    const auto part = static_cast<std::size_t>(obstacle.part);
    if (crossed || obstacle.feature == Feature::hole_edge || !stands(part)) return;
    const Nearest near = nearest(segment, obstacle);
    crossed = near.distance_in <= 0 && !is_cut_out(covered_[part], near.on_second);
  });
  return crossed;
}

std::optional<Shortcut> StandingParts::through(Vec3 middle, Vec3 normal, const Room& room) const {
  const double needs_in = needed_in(arm_width_in, room.grid);
  const double out_in = needs_in + room.grid.half_diagonal_in();
  const std::array<int, 3> before = room.grid.cell_at(middle - normal * out_in);
  const std::array<int, 3> after = room.grid.cell_at(middle + normal * out_in);
  for (const std::array<int, 3>& end : {before, after})
    if (!room.grid.holds(end) || room.free_in[room.grid.index(end)] < needs_in) return std::nullopt;
  for (double s = -out_in; s <= out_in; s += sight_step_in)
    if (free_in(middle + normal * s, arm_width_in) < arm_width_in / 2 - fit_rounding_in)
      return std::nullopt;
  const double length_in = 2 * (out_in + room.grid.half_diagonal_in());
  return Shortcut{room.grid.index(before), room.grid.index(after), static_cast<float>(length_in)};
}

std::vector<Shortcut> StandingParts::through_frames(const Room& room) const {
  std::vector<Shortcut> all;
  if (has_meshes()) return all;
  for (const Frame& frame : prepared_.project->structure.frames)
    for (const Hole& hole : frame.holes)
      if (const auto* circle = std::get_if<Circle>(&hole.shape);
          circle && circle->diameter_in >= arm_width_in)
        if (const auto found =
                through(frame.plane.in_space(circle->centre), frame.plane.normal, room))
          all.push_back(*found);
  return all;
}

bool StandingParts::seen_from(const OpeningShape& shape, Vec3 place) const {
  constexpr double eye_off_edge = 0.7;
  constexpr std::size_t most_eyes = 8;
  std::vector<Vec3> eyes{shape.centre};
  const std::size_t step = (shape.outline.size() + most_eyes - 1) / most_eyes;
  for (std::size_t i = 0; i < shape.outline.size(); i += step)
    eyes.push_back(between(shape.centre, shape.outline[i], eye_off_edge));
  return std::any_of(eyes.begin(), eyes.end(), [&](Vec3 eye) {
    return distance(eye, place) <= shape.opening->reach_in && is_open_between(eye, place);
  });
}

}  // namespace linewright
