#pragma once
// An air system as a tree of sections that can be parted from each other.

#include <string>
#include <vector>

#include "planning/air_system.hpp"

namespace linewright {

/// A route, a node, or a loop of both, which no single joint can part.
struct Section {
  std::string name;  ///< of the route or node; for a loop, of all in it
  double volume_in3 = 0;
  int parent = -1;  ///< the section next nearer the root; -1 for the root
  bool is_route = false;
  int node = -1;     ///< index of the node, in a loop of the one next to the root; -1 for a route
  double doubt = 0;  ///< of a leak in it or at its joint with the parent, by `joint_doubt`
  int trouble = 0;   ///< it takes to open that joint
  /// The joint with the parent: this route's end at this node. Empty for the root.
  std::string joint_route;
  std::string joint_node;
};

struct SectionTree {
  std::vector<Section> sections;  ///< each after its parent
};

/// The sections of a system, the root being the one with the node of index `root`.
SectionTree section_tree(const AirSystem& system, int root);

}  // namespace linewright
