#pragma once
// Which lines lie near which, found without a look at each pair.

#include <cstddef>
#include <vector>

#include "geometry/structure/box_index.hpp"
#include "lines/near/stretch.hpp"

namespace linewright {

/// The stretch's bounds with all that its radii and its reach take off a distance.
Bounds bounds_with_reach(const Stretch& stretch, Reach reach);
/// Of each of several.
std::vector<Bounds> bounds_with_reach(const std::vector<Stretch>& stretches, Reach reach);

/// Lines by where they and their reach are: those that it leaves out `are_far_apart`.
class LineNeighbours {
 public:
  /// `lines` has the bounds with reach of all stretches of each line, in the project's order.
  explicit LineNeighbours(const std::vector<std::vector<Bounds>>& lines);

  /// Lines that may come within `horizon_in` of a stretch, its reach included, by their index, in
  /// order.
  std::vector<std::size_t> near(const Stretch& stretch, Reach reach, double horizon_in) const;
  /// Those after a line that may come within `horizon_in` of it.
  std::vector<std::size_t> after(std::size_t line, double horizon_in) const;

 private:
  std::vector<std::size_t> lines_of(const std::vector<std::size_t>& boxes) const;

  std::vector<Bounds> bounds_;        ///< of all stretches, in the lines' order
  std::vector<std::size_t> line_of_;  ///< of each of these
  std::vector<std::size_t> first_;  ///< the place of each line's first; at last how many there are
  BoxIndex index_;
};

}  // namespace linewright
