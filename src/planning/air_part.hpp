#pragma once
// A part of an air system that is sealed off and tested by itself: what the test set reaches when
// lines are capped.

#include <string>
#include <variant>
#include <vector>

#include "planning/air_system.hpp"

namespace linewright {

struct AirPart {
  AirSystem system;                 ///< what is tested; a capped line ends at a node without volume
  std::vector<bool> is_cap;         ///< of each node of its network: the cap on one line's end
  int connected = 0;                ///< index of the node with the test set
  std::vector<std::string> caps;    ///< "static-main at bulkhead": ends of lines that are capped
  std::vector<std::string> sealed;  ///< ports, probes and drains among the caps: sealed themselves
  double whole_in3 = 0;             ///< of the whole system
  std::vector<std::string> whole_without_volume;  ///< its nodes that count as nothing in that
};

/// The part of `whole` that is reached from the node `at` without going through any of `caps`. A
/// port, a probe or a drain that is named as a cap is sealed and tested with its joint; at any
/// other node the ends of the lines that come to it are capped, and it is not in the part. Or what
/// is wrong: a name that is no node of the system, a cap where the test set is, one that nothing of
/// the part leads to, a test set that reaches no line.
std::variant<AirPart, std::string> part_of_system(const AirSystem& whole, const std::string& at,
                                                  const std::vector<std::string>& caps);

}  // namespace linewright
