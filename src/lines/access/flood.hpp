#pragma once
// Shortest ways through the free cells of a grid.

#include <cstdint>
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

/// A cell to begin from, and the length up to there. Grids have no more cells than it can count.
using Start = std::pair<std::uint32_t, float>;

/// Along the edges and diagonals of cells with at least `needs_in` of room, which no true way is
/// longer than; no farther than `most_in`. Gives `length_in` one value for each cell, and takes its
/// memory again where it has been filled before.
void flood(const Room& room, double needs_in, const std::vector<Start>& starts, double most_in,
           const std::vector<Shortcut>& shortcuts, std::vector<float>& length_in);

/// The same without lengths, from side to side of cells only: zero where it comes to.
std::vector<float> connected(const Room& room, double needs_in, const std::vector<Start>& starts);

/// True where all six cells beside a reached one are reached.
bool is_amid(const std::vector<float>& reached, const CellGrid& grid, std::size_t index);

}  // namespace linewright
