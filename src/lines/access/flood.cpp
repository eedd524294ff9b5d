#include "lines/access/flood.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <unordered_map>

namespace linewright {

namespace {

struct Step {
  std::array<int, 3> by{};
  std::ptrdiff_t index_by = 0;
  float length_in = 0;
};

/// To all cells that touch one, if only by a corner.
std::vector<Step> steps_of(const CellGrid& grid) {
  std::vector<Step> steps;
  for (int z = -1; z <= 1; ++z)
    for (int y = -1; y <= 1; ++y)
      for (int x = -1; x <= 1; ++x) {
        if (x == 0 && y == 0 && z == 0) continue;
        const std::ptrdiff_t index_by = (static_cast<std::ptrdiff_t>(z) * grid.count[1] + y) *
                                            static_cast<std::ptrdiff_t>(grid.count[0]) +
                                        x;
        const double length_in = grid.cell_in * std::sqrt(x * x + y * y + z * z);
        steps.push_back({{x, y, z}, index_by, static_cast<float>(length_in)});
      }
  return steps;
}

/// Cells to go on from, sorted by length no finer than the shortest step: of what is in one slot
/// nothing shortens another but by rounding, and then it is looked at again.
class Front {
 public:
  Front(const Room& room, double needs_in, double most_in, std::vector<float>& length_in)
      : room_(room),
        needs_in_(static_cast<float>(needs_in)),
        most_in_(static_cast<float>(most_in)),
        length_in_(length_in),
        steps_(steps_of(room.grid)) {}

  void open(std::size_t cell) {
    const auto slot = static_cast<std::size_t>(static_cast<double>(length_in_[cell]) / slot_in());
    if (slot >= slots_.size()) slots_.resize(slot + 1);
    slots_[slot].emplace_back(static_cast<std::uint32_t>(cell), length_in_[cell]);
  }

  void come_to(std::size_t cell, float length_in) {
    if (length_in >= length_in_[cell] || length_in > most_in_) return;
    length_in_[cell] = length_in;
    open(cell);
  }

  /// From the shortest on; `then(cell, length)` may come to more.
  template <typename Then>
  void go_on(const Then& then) {
    for (std::size_t slot = 0; slot < slots_.size(); ++slot) {
      for (std::size_t i = 0; i < slots_[slot].size(); ++i) {
        const auto [cell, length_in] = slots_[slot][i];
        if (length_in > length_in_[cell]) continue;
        step_from(cell, length_in);
        then(cell, length_in);
      }
      slots_[slot] = {};
    }
  }

 private:
  double slot_in() const { return room_.grid.cell_in; }

  void step_from(std::size_t from, float length_in) {
    const CellGrid& grid = room_.grid;
    const std::array<int, 3> cell = grid.cell(from);
    bool inside = true;
    for (std::size_t axis = 0; axis < 3; ++axis)
      inside = inside && cell[axis] > 0 && cell[axis] + 1 < grid.count[axis];
    for (const Step& step : steps_) {
      if (!inside &&
          !grid.holds({cell[0] + step.by[0], cell[1] + step.by[1], cell[2] + step.by[2]}))
        continue;
      const std::size_t next = from + static_cast<std::size_t>(step.index_by);
      if (room_.free_in[next] >= needs_in_) come_to(next, length_in + step.length_in);
    }
  }

  const Room& room_;
  float needs_in_;
  float most_in_;
  std::vector<float>& length_in_;
  std::vector<Step> steps_;
  std::vector<std::vector<Start>> slots_;
};

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

void flood(const Room& room, double needs_in, const std::vector<Start>& starts, double most_in,
           const std::vector<Shortcut>& shortcuts, std::vector<float>& length_in) {
  length_in.assign(room.grid.size(), not_reached);
  Front front(room, needs_in, most_in, length_in);
  std::unordered_multimap<std::size_t, Shortcut> at;
  for (const Shortcut& each : shortcuts) {
    at.emplace(each.from, each);
    at.emplace(each.to, Shortcut{each.to, each.from, each.length_in});
  }
  for (const auto& [cell, length] : starts) length_in[cell] = std::min(length_in[cell], length);
  // Those amid others lead nowhere that these do not.
  for (const auto& [cell, length] : starts)
    if (!is_amid(length_in, room.grid, cell)) front.open(cell);
  front.go_on([&](std::size_t cell, float length) {
    const auto [first, last] = at.equal_range(cell);
    for (auto each = first; each != last; ++each)
      front.come_to(each->second.to, length + each->second.length_in);
  });
}

}  // namespace linewright
