#pragma once
// Two lines side by side.

#include "lines/prepared.hpp"

namespace linewright {

/// Two lines that end at one node do not count as neighbours this near to it: they part there
/// [common practice, no source].
inline constexpr double shared_node_zone_in = 2.0;

/// Two soft lines, plastic tubes or hoses, do not as far as each one's first support, and no
/// farther from the node than this: nothing holds them apart before it, and they bear on each other
/// without sawing [common practice, no source].
inline constexpr double soft_node_zone_in = 4.0;

/// How far from its end at a node a line still parts from another one there: for two soft lines to
/// its first support, within `soft_node_zone_in`; never less than `shared_node_zone_in`.
double parting_zone_in(const PreparedRoute& route, const Node* node, bool both_soft);
/// True where both are plastic tubes or hoses.
bool are_soft(const PreparedRoute& first, const PreparedRoute& second);

/// How far a line lies in the fitting at its end, or in what the fitting's nut takes up: 1/4 in and
/// twice its diameter [common practice, no source].
double fitting_reach_in(const PreparedRoute& route);

/// Where two places, one on each of two lines, are with respect to a node that both lines end at.
enum class Sharing {
  none,       ///< not both within the zone of one
  parting,    ///< both within the zone, one or both of them out of the fitting
  in_fitting  ///< both in the fitting
};
Sharing sharing_at(const PreparedRoute& first, double first_in, const PreparedRoute& second,
                   double second_in);

/// True where both places are within the zone of a node that both routes end at.
inline bool at_shared_node(const PreparedRoute& first, double first_in, const PreparedRoute& second,
                           double second_in) {
  return sharing_at(first, first_in, second, second_in) != Sharing::none;
}

}  // namespace linewright
