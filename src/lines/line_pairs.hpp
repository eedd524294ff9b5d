#pragma once
// Two lines side by side.

#include "lines/prepared.hpp"

namespace linewright {

/// Two lines that end at one node do not count against each other this near to it: the fitting
/// holds them [common practice, no source].
inline constexpr double shared_node_zone_in = 2.0;

/// True where both places are within the zone of a node that both routes end at.
bool at_shared_node(const PreparedRoute& first, double first_in, const PreparedRoute& second,
                    double second_in);

}  // namespace linewright
