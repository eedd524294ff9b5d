#pragma once
// What stands in the way of arms and eyes while some closures are on.

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "lines/access/flood.hpp"
#include "lines/access/room.hpp"

namespace linewright {

/// Room that the middles of two neighbouring cells need for a body of this width to pass from one
/// to the other.
double needed_in(double width_in, const CellGrid& grid);

class StandingParts {
 public:
  /// All must outlive it.
  StandingParts(const PreparedProject& prepared, const std::vector<CoveredPart>& covered,
                const std::set<std::string>& closed);

  /// True for a part that is there: it goes on with no closure, or with one that is on.
  bool stands(std::size_t part) const { return stands_[part] != 0; }
  /// True where nothing stands between two places; the second may lie in the part that holds what
  /// is there.
  bool is_open_between(Vec3 from, Vec3 to) const;
  /// Through the middle of a hole that an arm just fits, which the grid may miss.
  std::optional<Shortcut> through(Vec3 middle, Vec3 normal, const Room& room) const;
  /// Those through the round holes of frames.
  std::vector<Shortcut> through_frames(const Room& room) const;
  /// True where the place can be seen from the opening in a straight line, within its reach.
  bool seen_from(const OpeningShape& shape, Vec3 place) const;
  bool has_meshes() const { return !prepared_.obstacles.meshes().empty(); }

 private:
  double free_in(Vec3 place, double limit_in) const;
  bool crosses_mesh(const Segment3& segment) const;
  bool crosses(Vec3 from, Vec3 to) const;

  const PreparedProject& prepared_;
  const std::vector<CoveredPart>& covered_;
  std::vector<char> stands_;  ///< of each part
};

}  // namespace linewright
