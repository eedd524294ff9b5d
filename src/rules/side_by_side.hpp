#pragma once
// Judging many things at once, with the same result as one after the other.

#include <exception>
#include <iterator>
#include <thread>
#include <utility>
#include <vector>

#include "geometry/parallel.hpp"
#include "model/judgement.hpp"

namespace linewright {

/// Calls `work(i)` for every i under `count`, on all of the machine's threads, and gives the
/// judgements of each in the order of i. What `work` throws is thrown on, of several the first.
template <typename Work>
std::vector<std::vector<Judgement>> each_side_by_side(std::size_t count, const Work& work) {
  std::vector<std::vector<Judgement>> found(count);
  std::vector<std::exception_ptr> failures(count);
  for_each_parallel(count, std::thread::hardware_concurrency(), [&](std::size_t i) {
    try {
      found[i] = work(i);
    } catch (...) {
      failures[i] = std::current_exception();
    }
  });
  for (const std::exception_ptr& failure : failures)
    if (failure) std::rethrow_exception(failure);
  return found;
}

/// All of several lists, one after another.
inline std::vector<Judgement> in_one_list(std::vector<std::vector<Judgement>> found) {
  std::size_t of_all = 0;
  for (const std::vector<Judgement>& each : found) of_all += each.size();
  std::vector<Judgement> all;
  all.reserve(of_all);
  for (std::vector<Judgement>& each : found) {
    std::move(each.begin(), each.end(), std::back_inserter(all));
    // Of thousands of lines what was moved from would stand beside what is kept.
    each = {};
  }
  return all;
}

/// The judgements of all, in one list.
template <typename Work>
std::vector<Judgement> side_by_side(std::size_t count, const Work& work) {
  return in_one_list(each_side_by_side(count, work));
}

}  // namespace linewright
