#pragma once
// Which lines a change of some can concern.

#include <cstddef>
#include <vector>

#include "lines/prepared.hpp"

namespace linewright {

/// What lines share, as a hole or a guide, they share no farther apart than this
/// [common practice, no source].
inline constexpr double shares_within_in = 2.0;
/// A fitting or a pulley goes with its line, and is near another line no farther away than this:
/// the largest distance that any limit asks is 6 in [common practice, no source].
inline constexpr double body_near_within_in = 8.0;

/// Which routes of a project go together, each by 1 or 0.
struct ConcernedRoutes {
  /// Those that changed, and those that they are joined to, one through another: by a node, a
  /// system of air, a control or ties.
  std::vector<char> joined;
  /// These, and all that come so near to them, as they are or were drawn, that more than the gap
  /// between the two may be another now.
  std::vector<char> with_neighbours;
};

/// Of routes that changed, by their index. `before` is of the same routes as `now`.
ConcernedRoutes concerned_routes(const Project& before, const PreparedProject& now,
                                 const std::vector<std::size_t>& changed);

}  // namespace linewright
