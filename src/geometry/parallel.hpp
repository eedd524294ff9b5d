#pragma once
// Work shared out over threads.

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <vector>

#include "system/joined_thread.hpp"

namespace linewright {

/// Calls `work(i)` once for every i under `count`, on up to `threads` threads, in no set order.
/// `work` must not throw.
template <typename Work>
void for_each_parallel(std::size_t count, unsigned threads, const Work& work) {
  std::atomic<std::size_t> next = 0;
  const auto worker = [&] {
    for (std::size_t i = next++; i < count; i = next++) work(i);
  };
  std::vector<JoinedThread> others;
  for (std::size_t i = 1; i < std::min<std::size_t>(threads, count); ++i)
    others.emplace_back(worker);
  worker();
}

}  // namespace linewright
