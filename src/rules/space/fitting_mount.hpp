#pragma once
// What holds a fitting of real size, and so is not in its way.

#include <limits>
#include <map>
#include <set>
#include <vector>

#include "lines/prepared.hpp"

namespace linewright {

/// The face of a mesh or a channel that a fitting is mounted on.
struct MountFace {
  double distance_in = std::numeric_limits<double>::infinity();  ///< from the node
  Vec3 foot;
  Vec3 normal;  ///< of unit length
};

/// The structure nearest to a node that it holds is what the fitting is mounted on, with skins and
/// doublers that lie on that; of a mesh or a channel the face that it stands on. What it goes
/// through by a hole is that only of a bulkhead union, and of what is mounted in holes: ports,
/// probes, instruments, drains and valves. All else that is near is in its way, and so is what it
/// is mounted on where one of its axes goes through that with no hole, or into a solid.
class FittingMount {
 public:
  FittingMount(const PreparedProject& prepared, const NodeFitting& fitting);

  /// True where the obstacle is of what the fitting is mounted on.
  bool holds(const Obstacle& obstacle, bool of_mesh) const;

 private:
  const Node& node() const { return *fitting_->node; }
  const Part& part_of(int part) const;
  bool holds_still(int part) const;
  bool goes_through(const Obstacle& obstacle) const;
  bool goes_into_solid(const Obstacle& obstacle) const;
  void take_hole(const Frame& sheet, int part);
  void note_passed(const Frame& sheet, int part);
  void take_face(const Obstacle& obstacle);
  void take_near(int part, double distance_in);
  void find_parts_near();
  void find_mounts();

  const PreparedProject* prepared_;
  const NodeFitting* fitting_;
  std::map<int, double> parts_near_in_;  ///< by part, from the node
  std::map<int, MountFace> faces_;       ///< by part
  std::set<int> passed_;                 ///< parts that it goes through by a hole
  std::vector<int> mounts_;
};

}  // namespace linewright
