#pragma once
// Space cut into cubes.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <optional>

#include "geometry/bounds.hpp"

namespace linewright {

/// Cells are counted along FS first, then BL, then WL.
struct CellGrid {
  Vec3 origin;  ///< the least corner
  double cell_in = 1;
  std::array<int, 3> count{};

  /// Covers `bounds` with cells of `cell_in`, or of larger ones where there would be more than
  /// `most` of them.
  CellGrid(const Bounds& bounds, double least_cell_in, double most) : origin(bounds.min) {
    const Vec3 size = bounds.max - bounds.min;
    cell_in = least_cell_in;
    const auto along = [this](double length_in) {
      return static_cast<int>(std::ceil(std::max(length_in, cell_in) / cell_in));
    };
    for (;; cell_in *= 1.25) {
      const double cells = std::ceil(std::max(size.x, cell_in) / cell_in) *
                           std::ceil(std::max(size.y, cell_in) / cell_in) *
                           std::ceil(std::max(size.z, cell_in) / cell_in);
      if (cells <= most) break;
    }
    count = {along(size.x), along(size.y), along(size.z)};
    // About the middle, so that a mirror image has the mirror image of the cells.
    const Vec3 middle_of_all = (bounds.min + bounds.max) / 2;
    origin = middle_of_all - Vec3{1.0 * count[0], 1.0 * count[1], 1.0 * count[2]} * (cell_in / 2);
  }

  std::size_t size() const {
    return static_cast<std::size_t>(count[0]) * static_cast<std::size_t>(count[1]) *
           static_cast<std::size_t>(count[2]);
  }
  std::size_t index(const std::array<int, 3>& cell) const {
    return (static_cast<std::size_t>(cell[2]) * static_cast<std::size_t>(count[1]) +
            static_cast<std::size_t>(cell[1])) *
               static_cast<std::size_t>(count[0]) +
           static_cast<std::size_t>(cell[0]);
  }
  std::array<int, 3> cell(std::size_t index) const {
    const auto x = static_cast<std::size_t>(count[0]);
    const auto y = static_cast<std::size_t>(count[1]);
    return {static_cast<int>(index % x), static_cast<int>(index / x % y),
            static_cast<int>(index / x / y)};
  }
  Vec3 middle(const std::array<int, 3>& cell) const {
    return origin + Vec3{cell[0] + 0.5, cell[1] + 0.5, cell[2] + 0.5} * cell_in;
  }
  Vec3 middle(std::size_t index) const { return middle(cell(index)); }
  bool holds(const std::array<int, 3>& cell) const {
    for (std::size_t i = 0; i < 3; ++i)
      if (cell[i] < 0 || cell[i] >= count[i]) return false;
    return true;
  }
  /// The cell that a place lies in; it may be outside of the grid.
  std::array<int, 3> cell_at(Vec3 place) const {
    const Vec3 at = (place - origin) / cell_in;
    const auto whole = [](double value) {
      return static_cast<int>(std::floor(std::clamp(value, -1e6, 1e6)));
    };
    return {whole(at.x), whole(at.y), whole(at.z)};
  }
  /// From the middle of a cell to its corner.
  double half_diagonal_in() const { return cell_in * std::sqrt(3.0) / 2; }

  /// Calls `visit(first, last)` with the row of indices, along FS, of cells whose middle lies in
  /// the ball; `last` is beyond them.
  template <typename Visit>
  void visit_ball(Vec3 middle_of_ball, double radius_in, const Visit& visit) const {
    const std::array<int, 3> at = cell_at(middle_of_ball);
    const int about = static_cast<int>(std::ceil(radius_in / cell_in)) + 1;
    // No row has more of the ball than the one through its middle.
    if (at[0] + about < 0 || at[0] - about >= count[0]) return;
    for (int z = std::max(at[2] - about, 0); z <= std::min(at[2] + about, count[2] - 1); ++z)
      for (int y = std::max(at[1] - about, 0); y <= std::min(at[1] + about, count[1] - 1); ++y) {
        const Vec3 off = middle({0, y, z}) - middle_of_ball;
        const double left = radius_in * radius_in - off.y * off.y - off.z * off.z;
        if (left < 0) continue;
        const double half = std::sqrt(left);
        const double first = std::clamp(std::ceil((-half - off.x) / cell_in), 0.0, 1.0 * count[0]);
        const double last =
            std::clamp(std::floor((half - off.x) / cell_in) + 1, first, 1.0 * count[0]);
        visit(index({static_cast<int>(first), y, z}), index({static_cast<int>(last), y, z}));
      }
  }

  /// Calls `visit(cell, index)` with each cell whose middle lies in `bounds`.
  template <typename Visit>
  void visit(const Bounds& bounds, const Visit& visit) const {
    std::array<int, 3> low = cell_at(bounds.min);
    std::array<int, 3> high = cell_at(bounds.max);
    for (std::size_t i = 0; i < 3; ++i) {
      low[i] = std::max(low[i], 0);
      high[i] = std::min(high[i], count[i] - 1);
    }
    for (int z = low[2]; z <= high[2]; ++z)
      for (int y = low[1]; y <= high[1]; ++y)
        for (int x = low[0]; x <= high[0]; ++x) {
          const std::array<int, 3> cell{x, y, z};
          visit(cell, index(cell));
        }
  }
};

}  // namespace linewright
