#pragma once
// What a hand or an eye has to come to: everything that is mounted along the lines.

#include <string>
#include <vector>

#include "lines/prepared.hpp"

namespace linewright {

enum class ThingKind {
  support,
  grommet,
  fairlead,
  pulley,
  terminal,
  turnbuckle,
  attachment,
  sleeve,
  fitting
};

struct Thing {
  ThingKind kind = ThingKind::support;
  std::string name;                      ///< "clamp on S3L", "fairlead in F4-b", "tee-1"
  const PreparedRoute* route = nullptr;  ///< of a node the first that ends there
  double distance_in = 0;                ///< along it
  Vec3 at;
  SourceLocation where;
  const Node* node = nullptr;  ///< fittings, and terminals at a node
};

/// Route by route, in order along each. A sleeve is at its middle. Where a cable ends there is a
/// terminal, unless one is stated within `at_terminal_in` of the end.
std::vector<Thing> reachable_things(const PreparedProject& prepared);

inline constexpr double at_terminal_in = 3.0;

}  // namespace linewright
