#pragma once
// What a hand comes to while some closures are on: an arm goes by a way in through free space,
// bending round what stands in it, as a path through a coarse grid. Where the grid is in doubt, the
// answer is that it does not come there. Lines, their fittings, pulleys and movers
// do not stand in the way.

#include <memory>
#include <set>
#include <string>
#include <vector>

#include "lines/access/way_in.hpp"

namespace linewright {

class ArmReach {
 public:
  /// `prepared` must outlive it. `places` are all that will be asked for.
  ArmReach(const PreparedProject& prepared, std::vector<Vec3> places);
  ~ArmReach();

  const std::vector<WayIn>& ways() const;
  double cell_in() const;
  /// The ways by which a hand comes to each place while these closures are on, the shortest first.
  std::vector<std::vector<ReachedBy>> reached(const std::set<std::string>& closed) const;
  /// For each place whether it can be seen in a straight line from one of the openings, within
  /// its reach.
  std::vector<bool> seen(const std::set<std::string>& closed) const;

 private:
  struct Model;
  std::unique_ptr<Model> model_;
};

}  // namespace linewright
