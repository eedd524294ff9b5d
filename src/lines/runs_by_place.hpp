#pragma once
// Finds free runs by the part of a route that they lead over.

#include <vector>

#include "lines/free_run.hpp"

namespace linewright {

/// A leg of a run.
struct LegOfRun {
  const FreeRun* run = nullptr;
  const RunLeg* leg = nullptr;
  double walked_in = 0;  ///< of the run's legs before it
};

/// Built once over runs, which must outlive it.
class RunsByPlace {
 public:
  /// The legs over one route, by its index in the project.
  RunsByPlace(const std::vector<FreeRun>& runs, int route);

  /// Those from `low_in` to `high_in` along the route, in the order of the runs.
  std::vector<LegOfRun> over(double low_in, double high_in) const;

 private:
  std::vector<LegOfRun> legs_;  ///< in order along the route
};

}  // namespace linewright
