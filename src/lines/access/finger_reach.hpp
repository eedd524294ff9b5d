#pragma once
// From where an arm ends to the things themselves: fingers go where the hand no longer fits, and
// the last bit in a straight line.

#include <optional>
#include <vector>

#include "lines/access/standing_parts.hpp"

namespace linewright {

class FingerReach {
 public:
  /// `places` are what is to be reached; they must outlive it.
  FingerReach(const CellGrid& grid, const std::vector<Vec3>& places);

  /// For each place the length by which it is reached, no longer than `reach_in`, by arms that fill
  /// the cells with these lengths; nothing where it is not. To the lengths are added those of the
  /// fingers beyond; `by_finger` is memory to work in.
  std::vector<std::optional<double>> lengths_in(const Room& room, double reach_in,
                                                const StandingParts& parts,
                                                std::vector<float>& by_arm,
                                                std::vector<float>& by_finger) const;

 private:
  void add_fingers(const Room& room, std::vector<float>& by_arm,
                   std::vector<float>& by_finger) const;

  const std::vector<Vec3>& places_;
  std::vector<std::uint32_t> near_place_;  ///< cells from which fingers may come to one, in order
};

}  // namespace linewright
