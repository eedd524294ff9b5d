#include "lines/access/arm_starts.hpp"

#include <algorithm>

#include "lines/access/way_in.hpp"

namespace linewright {

namespace {

/// Where a person can be to begin with, as cells of the body's grid.
std::vector<Start> border_cells(const CellGrid& grid) {
  std::vector<Start> starts;
  for (std::size_t i = 0; i < grid.size(); ++i) {
    const std::array<int, 3> cell = grid.cell(i);
    for (std::size_t axis = 0; axis < 3; ++axis)
      if (cell[axis] == 0 || cell[axis] == grid.count[axis] - 1) {
        starts.emplace_back(static_cast<std::uint32_t>(i), 0.0F);
        break;
      }
  }
  return starts;
}

Bounds bounds_of_outline(const OpeningShape& shape, double about_in) {
  Bounds bounds = empty_bounds();
  for (const Vec3 corner : shape.outline) include(bounds, corner);
  return grown(bounds, about_in);
}

}  // namespace

void shut_openings(Room& room, const std::vector<OpeningShape>& shapes, std::size_t but_of_way) {
  const CellGrid& grid = room.grid;
  for (std::size_t i = 0; i < shapes.size(); ++i) {
    if (i + 1 == but_of_way) continue;
    grid.visit(bounds_of_outline(shapes[i], grid.cell_in),
               [&](const std::array<int, 3>& cell, std::size_t index) {
                 if (shapes[i].holds(grid.middle(cell), grid.cell_in)) room.free_in[index] = 0;
               });
  }
}

std::vector<float> standing(const Room& for_body) {
  return connected(for_body, needed_in(standing_width_in, for_body.grid),
                   border_cells(for_body.grid));
}

std::vector<float> crawled(const OpeningShape& shape, const Room& for_body,
                           const std::vector<float>& outside) {
  Room inside = for_body;
  for (std::size_t i = 0; i < outside.size(); ++i)
    if (outside[i] != not_reached) inside.free_in[i] = 0;
  const double needs_in = needed_in(crawling_width_in, inside.grid);
  std::vector<Start> starts;
  for (double s = -crawling_width_in; s <= crawling_width_in; s += 1) {
    const std::array<int, 3> cell = inside.grid.cell_at(shape.centre + shape.normal * s);
    if (!inside.grid.holds(cell)) continue;
    const std::size_t index = inside.grid.index(cell);
    if (inside.free_in[index] >= needs_in)
      starts.emplace_back(static_cast<std::uint32_t>(index), 0.0F);
  }
  return connected(inside, needs_in, starts);
}

std::vector<Start> about_person(const std::vector<float>& person, const Room& for_body,
                                const Room& for_arm, double width_in) {
  std::vector<char> taken(for_arm.grid.size(), 0);
  const double own_in = for_body.grid.half_diagonal_in();
  for (std::size_t i = 0; i < person.size(); ++i) {
    if (person[i] == not_reached) continue;
    const Vec3 middle = for_body.grid.middle(i);
    // Amid others its own cell is enough, for theirs lie side by side.
    const double within_in = is_amid(person, for_body.grid, i) ? own_in : width_in / 2;
    for_arm.grid.visit_ball(middle, within_in, [&](std::size_t first, std::size_t last) {
      std::fill(taken.begin() + static_cast<std::ptrdiff_t>(first),
                taken.begin() + static_cast<std::ptrdiff_t>(last), char{1});
    });
  }
  const auto hand_in = static_cast<float>(needed_in(finger_width_in, for_arm.grid));
  std::vector<Start> starts;
  for (std::size_t i = 0; i < taken.size(); ++i)
    if (taken[i] && for_arm.free_in[i] >= hand_in)
      starts.emplace_back(static_cast<std::uint32_t>(i), 0.0F);
  return starts;
}

std::vector<Start> in_opening(const OpeningShape& shape, const Room& for_arm,
                              const StandingParts& parts) {
  const CellGrid& grid = for_arm.grid;
  const double needs_in = needed_in(arm_width_in, grid);
  std::vector<Start> starts;
  grid.visit(bounds_of_outline(shape, grid.cell_in), [&](const std::array<int, 3>& cell,
                                                         std::size_t index) {
    if (for_arm.free_in[index] >= needs_in && shape.holds(grid.middle(cell), grid.cell_in))
      starts.emplace_back(static_cast<std::uint32_t>(index), static_cast<float>(grid.cell_in));
  });
  if (parts.has_meshes()) return starts;
  if (const auto passage = parts.through(shape.centre, shape.normal, for_arm)) {
    starts.emplace_back(static_cast<std::uint32_t>(passage->from), passage->length_in / 2);
    starts.emplace_back(static_cast<std::uint32_t>(passage->to), passage->length_in / 2);
  }
  return starts;
}

}  // namespace linewright
