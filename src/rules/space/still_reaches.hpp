#pragma once
// The reach of each line's spans, free ends taken still.

#include <cstddef>
#include <map>
#include <vector>

#include "lines/motion/reach.hpp"

namespace linewright {

/// A soft line's free end can swing as far as it is long. That is said once, of the end; against
/// all else its spans are held as though the end were still.
class StillReaches {
 public:
  /// `reaches` are those of each route's spans, in the project's order; they must outlive this.
  explicit StillReaches(const std::vector<std::vector<SpanReach>>& reaches);

  std::size_t size() const { return reaches_.size(); }
  const std::vector<SpanReach>& operator[](std::size_t route) const;

 private:
  const std::vector<std::vector<SpanReach>>& reaches_;
  std::map<std::size_t, std::vector<SpanReach>> stilled_;  ///< of routes with an end that swings
};

}  // namespace linewright
