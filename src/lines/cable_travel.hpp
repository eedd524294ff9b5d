#pragma once
// How far a line moves along itself.

#include <optional>

#include "geometry/centreline.hpp"
#include "model/line.hpp"
#include "model/network.hpp"

namespace linewright {

/// How far a line moves along itself from neutral.
struct Movement {
  double toward_from_in = 0;
  double toward_to_in = 0;
};

/// A cable's travel turned to the route's direction: `forward` moves it toward smaller FS. Where
/// the route turns back or runs square to FS, forward has no one sense along it, and the larger of
/// the two counts both ways. Nothing where the travel of a cable or rod is not stated; tubes and
/// wires stay.
std::optional<Movement> movement(const Route& route, const Line& line,
                                 const Centreline& centreline);

}  // namespace linewright
