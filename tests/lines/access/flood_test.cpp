// Shortest ways through a grid, against relaxing every step until nothing changes.

#include "lines/access/flood.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

namespace linewright {
namespace {

constexpr double needs_in = 0.5;

Room room_of(std::array<double, 3> size_in, double cell_in) {
  return {CellGrid({{0, 0, 0}, {size_in[0], size_in[1], size_in[2]}}, cell_in, 1e6), 1.0};
}

std::vector<float> flooded(const Room& room, const std::vector<Start>& starts, double most_in,
                           const std::vector<Shortcut>& shortcuts = {}) {
  // What is left of an earlier flood must not show.
  std::vector<float> length_in(7, 3.0F);
  flood(room, needs_in, starts, most_in, shortcuts, length_in);
  return length_in;
}

/// The same, slow and obvious.
std::vector<float> relaxed(const Room& room, const std::vector<Start>& starts, double most_in,
                           const std::vector<Shortcut>& shortcuts) {
  const CellGrid& grid = room.grid;
  std::vector<float> length_in(grid.size(), not_reached);
  bool changed = true;
  const auto lower = [&](std::size_t cell, float to) {
    if (to >= length_in[cell] || to > static_cast<float>(most_in)) return;
    length_in[cell] = to;
    changed = true;
  };
  for (const auto& [cell, length] : starts) length_in[cell] = std::min(length_in[cell], length);
  while (changed) {
    changed = false;
    for (std::size_t i = 0; i < grid.size(); ++i) {
      if (length_in[i] == not_reached) continue;
      const std::array<int, 3> cell = grid.cell(i);
      for (int z = -1; z <= 1; ++z)
        for (int y = -1; y <= 1; ++y)
          for (int x = -1; x <= 1; ++x) {
            const std::array<int, 3> next{cell[0] + x, cell[1] + y, cell[2] + z};
            if (!grid.holds(next) || room.free_in[grid.index(next)] < needs_in) continue;
            const double step_in = grid.cell_in * std::sqrt(x * x + y * y + z * z);
            lower(grid.index(next), length_in[i] + static_cast<float>(step_in));
          }
      for (const Shortcut& each : shortcuts) {
        if (each.from == i) lower(each.to, length_in[i] + each.length_in);
        if (each.to == i) lower(each.from, length_in[i] + each.length_in);
      }
    }
  }
  return length_in;
}

TEST(Flood, GoesStraightAndByDiagonals) {
  const Room room = room_of({5, 5, 1}, 1);
  const std::vector<float> length_in = flooded(room, {{0, 0.0F}}, 100);
  EXPECT_FLOAT_EQ(length_in[4], 4);
  EXPECT_FLOAT_EQ(length_in[6], std::sqrt(2.0F));
  EXPECT_FLOAT_EQ(length_in[24], 4 * std::sqrt(2.0F));
}

TEST(Flood, EndsAtItsMostAndAtWhatHasNoRoom) {
  Room room = room_of({9, 1, 1}, 1);
  EXPECT_EQ(flooded(room, {{0, 0.0F}}, 4)[5], not_reached);
  EXPECT_FLOAT_EQ(flooded(room, {{0, 0.0F}}, 4)[4], 4);
  room.free_in[3] = 0.4F;
  EXPECT_EQ(flooded(room, {{0, 0.0F}}, 100)[4], not_reached);
}

TEST(Flood, IsWhatRelaxingEveryStepGivesToTheBit) {
  std::mt19937 random(20261120);
  std::uniform_real_distribution<double> free_in(0, 1);
  std::uniform_real_distribution<float> up_to(0, 3);
  for (int round = 0; round < 60; ++round) {
    Room room = room_of({8.0 + round % 5, 7.0 + round % 3, 5}, round % 2 == 0 ? 1 : 1.25);
    std::uniform_int_distribution<std::uint32_t> cell(
        0, static_cast<std::uint32_t>(room.grid.size() - 1));
    // From nearly all free to a maze.
    const double share = 0.2 + 0.5 * round / 60;
    for (float& each : room.free_in) each = free_in(random) < share ? 0.2F : 0.9F;
    std::vector<Start> starts;
    for (int i = 0; i < 1 + round % 40; ++i) starts.emplace_back(cell(random), up_to(random));
    std::vector<Shortcut> shortcuts;
    for (int i = 0; i < round % 4; ++i)
      shortcuts.push_back({cell(random), cell(random), 1 + up_to(random)});
    const double most_in = 4 + round % 9;
    EXPECT_EQ(flooded(room, starts, most_in, shortcuts), relaxed(room, starts, most_in, shortcuts))
        << "round " << round;
  }
}

}  // namespace
}  // namespace linewright
