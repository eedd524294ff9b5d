#pragma once
// Where to part a leaking system so that the leak is found in the fewest tests.
//
// The lines are parted at joints: an end of a route at a node. A joint in a loop parts nothing, so
// a loop is one section with its nodes. What is left is a tree of sections. Leaks are at joints and
// fittings, hardly ever in a line's wall, so that volume says nothing of where one is: each step
// opens the joint that divides what is still to be suspected most evenly, by `joint_doubt`, and
// among joints that do so about as well the one that is least trouble. The test set stays where it
// is: a
// step seals the opened joint on the test set's side and tests that side. If it loses, the leak is
// in its part of the suspects; if it holds, it is proven tight, the joint is made again and the
// leak is in the rest.

#include <string>
#include <vector>

#include "planning/air_system.hpp"

namespace linewright {

/// One test in the search for a leak.
struct SplitStep {
  std::string route;                  ///< the joint that is opened: this route's end …
  std::string node;                   ///< … at this node
  bool node_side = false;             ///< seal the node's opening; else the route's end
  std::vector<std::string> if_loses;  ///< sections that then hold the leak
  std::vector<std::string> if_holds;
  int step_if_loses = 0;  ///< the next step, counted from one; 0: that section is the leak
  int step_if_holds = 0;
  double suspect_in3 = 0;  ///< volume suspect before this step
  double loses_in3 = 0;    ///< volume suspect after it, if it loses
  double holds_in3 = 0;
  double tested_in3 = 0;  ///< all that is sealed with the test set in this step
  double loss = 0;        ///< in the test's period, if the whole leak is in it; set by the plan
  double reading = 0;     ///< at the end of that period
};

/// The steps in the order of a key: the first step, then all that follow if it loses, then all that
/// follow if it holds. Empty for a system that is one section. `connected` is the index of the node
/// with the test set. Nodes of `is_cap`, by the index in the network, are caps on the ends of
/// lines: suspected with their lines, and never opened by themselves.
std::vector<SplitStep> split_order(const AirSystem& system, int connected,
                                   const std::vector<bool>& is_cap = {});

}  // namespace linewright
