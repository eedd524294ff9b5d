#pragma once
// Finds boxes near a box without a look at each.

#include <cstddef>
#include <memory>
#include <vector>

#include "geometry/bounds.hpp"

namespace linewright {

/// Built once over a list of boxes, none of them empty.
class BoxIndex {
 public:
  explicit BoxIndex(const std::vector<Bounds>& boxes);
  BoxIndex(BoxIndex&&) noexcept;
  BoxIndex& operator=(BoxIndex&&) noexcept;
  ~BoxIndex();

  /// Boxes that may come within `distance_in` of `wanted`, by their place in the list, in order:
  /// every one that `least_distance` says does, and some others.
  std::vector<std::size_t> near(const Bounds& wanted, double distance_in) const;

 private:
  struct Tree;
  std::unique_ptr<Tree> tree_;
};

}  // namespace linewright
