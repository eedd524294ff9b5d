#pragma once
// Where a line comes nearest to structure.

#include <functional>
#include <map>
#include <optional>

#include "lines/near/approach.hpp"
#include "lines/near/stretch.hpp"

namespace linewright {

/// Says whether an obstacle counts for the piece of the line around `distance_in`.
using Counts = std::function<bool(const Obstacle&, double distance_in)>;
/// Sorts obstacles into groups that are judged apart.
using Group = std::function<int(const Obstacle&)>;

/// Least margin for each group of obstacles over the stretch; a mesh is in one group. Obstacles
/// farther than `horizon_in` beyond the reach are left out. Exact for straights; arcs are chords
/// within `Centreline::default_sagitta_in`, which is taken off the gap.
std::map<int, Approach> nearest_structure(const Stretch& stretch, Reach reach,
                                          const Obstacles& obstacles, double horizon_in,
                                          const Group& group, const Counts& counts);

/// The same for what counts of one part; nothing where it is farther than the horizon.
std::optional<Approach> nearest_of_part(const Stretch& stretch, Reach reach,
                                        const Obstacles& obstacles, int part, double horizon_in,
                                        const Counts& counts);

/// True where the stretch, its reach counted, stays `gap_in` or more off all that counts of one
/// part; found out without looking for the nearest place.
bool keeps_off(const Stretch& stretch, Reach reach, const Obstacles& obstacles, int part,
               double gap_in, const Counts& counts);

}  // namespace linewright
