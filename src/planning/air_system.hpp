#pragma once
// One system of air lines as a leak test sees it: what is joined to what, and how much air it
// holds.

#include <string>
#include <string_view>
#include <vector>

#include "lines/air_network.hpp"

namespace linewright {

struct AirSystem {
  std::string name;
  SystemKind kind = SystemKind::static_air;
  AirNetwork network;
  std::vector<double> link_volume_in3;  ///< bores, in the order of the network's links
  std::vector<double> node_volume_in3;  ///< in the order of its nodes; 0 where none is stated
  /// Instruments and tees whose volume the project does not state: counted as nothing.
  std::vector<std::string> nodes_without_volume;
  /// "static: alternate at selector": other air that meets this system at a node.
  std::vector<std::string> joined_systems;

  /// Bores and nodes, each counted once however the lines loop.
  double volume_in3() const;
};

/// Names of the systems of a project, as written, in order of first use.
std::vector<std::string> system_names(const Project& project);

/// The systems that `wanted` can mean: the one so called in full ("static: alternate"), else those
/// so called after their kind ("alternate"), else all of that kind ("static").
std::vector<std::string> systems_meant(const Project& project, std::string_view wanted);

/// The kind of the system of this name. Precondition: a route is of it.
SystemKind kind_of_system(const Project& project, std::string_view name);

/// The pieces of a system that no node joins, each an air system, in file order; one for a sound
/// project, none for a name that no static, pitot or alpha route has. Points into `prepared`.
std::vector<AirSystem> air_systems(const PreparedProject& prepared, std::string_view name);

}  // namespace linewright
