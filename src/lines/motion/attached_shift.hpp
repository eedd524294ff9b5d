#pragma once
// How far what is fixed to a line moves along it.

#include <string>

#include "lines/prepared.hpp"

namespace linewright {

/// How far what is fixed to the line moves along it at the most: its movement, and for a cable its
/// stretch under the limit load.
struct AttachedShift {
  double toward_from_in = 0;
  double toward_to_in = 0;
  std::string missing;  ///< what is not known and so left out; empty for nothing
  bool bounded = true;  ///< false where what is missing could be anything
  double bound_in = 0;  ///< else it adds no more than this either way
};

/// For something fixed `at_in` along the route. Which end holds fast under the load cannot be told,
/// so the longer part stretches.
AttachedShift attached_shift(const PreparedRoute& route, double at_in);

}  // namespace linewright
