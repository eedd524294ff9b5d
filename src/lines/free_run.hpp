#pragma once
// The free length of line between two things that hold it. It may go on from one route to the next
// over tees and unions that hang on their lines.

#include <vector>

#include "lines/prepared.hpp"

namespace linewright {

/// Part of a route, in the direction the run is followed: `from_in` is above `to_in` where that is
/// against the route's own direction.
struct RunLeg {
  int route = 0;  ///< index into PreparedProject::routes
  double from_in = 0;
  double to_in = 0;
  double low_in() const { return from_in < to_in ? from_in : to_in; }
  double high_in() const { return from_in < to_in ? to_in : from_in; }
  double length_in() const { return high_in() - low_in(); }
};

/// One end of a run: a support, or nothing (an end that swings free).
struct RunEnd {
  int route = -1;
  int support = -1;  ///< index into the route's supports; -1: free
  bool held() const { return support >= 0; }
};

struct FreeRun {
  std::vector<RunLeg> legs;  ///< one or more, end to end
  RunEnd first;
  RunEnd last;
  double length_in = 0;    ///< the fittings that hang on it included, where their size is known
  bool cut_short = false;  ///< it goes on, but in more ways than are followed

  /// A tee or union hangs on it.
  bool carries_fitting() const { return legs.size() > 1; }
};

/// Every run between neighbouring supports, each once, and every tail that ends free. Where a tee
/// hangs on three lines there are three runs through it. Where lines hang on one another in a mesh
/// the runs soon are too many: from each support some hundreds are followed, and one that is
/// `cut_short` says that there are more.
std::vector<FreeRun> free_runs(const PreparedProject& prepared);

}  // namespace linewright
