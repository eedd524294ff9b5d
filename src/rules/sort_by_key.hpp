#pragma once
// Puts large values in order where they are.

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <utility>
#include <vector>

namespace linewright {

/// Like std::stable_sort by what `key_of` gives of each value, which is asked once of each, and
/// with no second copy of what is sorted: of ten thousand lines' judgements that would be the most
/// memory that is ever taken.
template <typename T, typename KeyOf>
void sort_by_key(std::vector<T>& values, const KeyOf& key_of) {
  std::vector<decltype(key_of(values.front()))> keys;
  keys.reserve(values.size());
  for (const T& value : values) keys.push_back(key_of(value));
  std::vector<std::size_t> from(values.size());
  std::iota(from.begin(), from.end(), std::size_t{0});
  std::stable_sort(from.begin(), from.end(),
                   [&keys](std::size_t a, std::size_t b) { return keys[a] < keys[b]; });
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
