#pragma once
// Where a clamp could hold a sleeve.

#include <optional>

#include "lines/prepared.hpp"

namespace linewright {

/// A part of a sleeve, in distances along its route.
struct SleevePart {
  double from_in = 0;
  double to_in = 0;
  double length_in() const { return to_in - from_in; }
};

/// Where a clamp about the sleeve is clear of every attachment through full travel: of several such
/// parts of it the longest. Nothing where there is none.
std::optional<SleevePart> clamp_place(const PreparedRoute& route, const Sleeve& sleeve);

}  // namespace linewright
