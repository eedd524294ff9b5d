#pragma once
// Shortest ways through the free cells of a grid.

#include <limits>
#include <utility>
#include <vector>

#include "lines/access/room.hpp"

namespace linewright {

inline constexpr float not_reached = std::numeric_limits<float>::infinity();

/// A way from cell to cell that was shown to be free by itself, such as through a hole's middle.
struct Shortcut {
  std::size_t from = 0;
  std::size_t to = 0;
  float length_in = 0;
};

/// A cell to begin from, and the length up to there.
using Start = std::pair<std::size_t, float>;

/// Along the edges and diagonals of cells with at least `needs_in` of room, which no true way is
/// longer than; no farther than `most_in`. One value for each cell.
std::vector<float> flood(const Room& room, double needs_in, const std::vector<Start>& starts,
                         double most_in, const std::vector<Shortcut>& shortcuts = {});

/// The same without lengths, from side to side of cells only: zero where it comes to.
std::vector<float> connected(const Room& room, double needs_in, const std::vector<Start>& starts);

/// True where all six cells beside a reached one are reached.
bool is_amid(const std::vector<float>& reached, const CellGrid& grid, std::size_t index);

}  // namespace linewright
