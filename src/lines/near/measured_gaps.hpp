#pragma once
// Gaps that were measured on the aeroplane, and what is drawn there.

#include <vector>

#include "lines/near/approach.hpp"
#include "lines/prepared.hpp"

namespace linewright {

/// What is no farther than this from the line, as drawn, may be what a gap was measured to where
/// its measure does not say.
inline constexpr double measured_to_within_in = 3.0;

/// A gap, with what stands on its other side: a part of the structure, the edge of a hole that the
/// line goes through, or another line; none of them where nothing is drawn there.
struct MeasuredGap {
  const Measurement* measured = nullptr;
  double distance_in = 0;         ///< along the line as it is judged
  std::optional<Approach> drawn;  ///< there; nothing where what it is to is not drawn near
  const Part* part = nullptr;
  const Crossing* hole = nullptr;
  const PreparedRoute* line = nullptr;

  /// The name of what it is to; empty where that is not known.
  std::string other() const;
};

/// All that were measured of a route, in the order of the files.
std::vector<MeasuredGap> measured_gaps(const PreparedProject& prepared, const PreparedRoute& route);

}  // namespace linewright
