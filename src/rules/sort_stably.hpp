#pragma once
// Puts large values in order where they are.

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <utility>
#include <vector>

namespace linewright {

/// What std::stable_sort does, with no second copy of what is sorted: of a thousand lines'
/// judgements that would be the most memory that is ever taken.
template <typename T, typename Before>
void sort_stably(std::vector<T>& values, const Before& before) {
  std::vector<std::size_t> from(values.size());
  std::iota(from.begin(), from.end(), std::size_t{0});
  std::stable_sort(from.begin(), from.end(),
                   [&](std::size_t a, std::size_t b) { return before(values[a], values[b]); });
  for (std::size_t start = 0; start < from.size(); ++start) {
    if (from[start] == start) continue;
    T held = std::move(values[start]);
    std::size_t to = start;
    while (from[to] != start) {
      values[to] = std::move(values[from[to]]);
      to = std::exchange(from[to], to);
    }
    values[to] = std::move(held);
    from[to] = to;
  }
}

}  // namespace linewright
