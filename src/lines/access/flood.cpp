#include "lines/access/flood.hpp"

#include <algorithm>
#include <functional>
#include <queue>
#include <unordered_map>

namespace linewright {

namespace {

using Entry = std::pair<float, std::size_t>;

struct Front {
  std::vector<float>& length_in;
  float most_in;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open = {};

  void come_to(std::size_t cell, float length) {
    if (length > most_in || length >= length_in[cell]) return;
    length_in[cell] = length;
    open.emplace(length, cell);
  }
};

void go_on(Front& front, const Room& room, float needs_in, std::size_t from) {
  const CellGrid& grid = room.grid;
  const std::array<int, 3> cell = grid.cell(from);
  for (int z = -1; z <= 1; ++z)
    for (int y = -1; y <= 1; ++y)
      for (int x = -1; x <= 1; ++x) {
        const std::array<int, 3> next{cell[0] + x, cell[1] + y, cell[2] + z};
        if (!grid.holds(next)) continue;
        const std::size_t index = grid.index(next);
        if (room.free_in[index] < needs_in) continue;
        const double step_in = grid.cell_in * std::sqrt(x * x + y * y + z * z);
        front.come_to(index, front.length_in[from] + static_cast<float>(step_in));
      }
}

}  // namespace

std::vector<float> connected(const Room& room, double needs_in, const std::vector<Start>& starts) {
  const CellGrid& grid = room.grid;
  std::vector<float> reached(grid.size(), not_reached);
  std::vector<std::size_t> open;
  const auto come_to = [&](std::size_t cell) {
    if (reached[cell] != not_reached) return;
    reached[cell] = 0;
    open.push_back(cell);
  };
  for (const Start& start : starts) come_to(start.first);
  const auto needs = static_cast<float>(needs_in);
  while (!open.empty()) {
    const std::size_t from = open.back();
    open.pop_back();
    const std::array<int, 3> cell = grid.cell(from);
    std::size_t step = 1;
    for (std::size_t axis = 0; axis < 3; ++axis) {
      if (cell[axis] > 0 && room.free_in[from - step] >= needs) come_to(from - step);
      if (cell[axis] + 1 < grid.count[axis] && room.free_in[from + step] >= needs)
        come_to(from + step);
      step *= static_cast<std::size_t>(grid.count[axis]);
    }
  }
  return reached;
}

bool is_amid(const std::vector<float>& reached, const CellGrid& grid, std::size_t index) {
  const std::array<int, 3> cell = grid.cell(index);
  std::size_t step = 1;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    if (cell[axis] > 0 && reached[index - step] == not_reached) return false;
    if (cell[axis] + 1 < grid.count[axis] && reached[index + step] == not_reached) return false;
    step *= static_cast<std::size_t>(grid.count[axis]);
  }
  return true;
}

std::vector<float> flood(const Room& room, double needs_in, const std::vector<Start>& starts,
                         double most_in, const std::vector<Shortcut>& shortcuts) {
  std::vector<float> length_in(room.grid.size(), not_reached);
  Front front{length_in, static_cast<float>(most_in)};
  std::unordered_multimap<std::size_t, Shortcut> at;
  for (const Shortcut& each : shortcuts) {
    at.emplace(each.from, each);
    at.emplace(each.to, Shortcut{each.to, each.from, each.length_in});
  }
  for (const auto& [cell, length] : starts) length_in[cell] = std::min(length_in[cell], length);
  // Those amid others lead nowhere that these do not.
  for (const auto& [cell, length] : starts)
    if (!is_amid(length_in, room.grid, cell)) front.open.emplace(length_in[cell], cell);
  while (!front.open.empty()) {
    const auto [length, cell] = front.open.top();
    front.open.pop();
    if (length > length_in[cell]) continue;
    go_on(front, room, static_cast<float>(needs_in), cell);
    const auto [first, last] = at.equal_range(cell);
    for (auto each = first; each != last; ++each)
      front.come_to(each->second.to, length + each->second.length_in);
  }
  return length_in;
}

}  // namespace linewright
