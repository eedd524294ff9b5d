#pragma once
// Where two lines come nearest to each other.

#include <functional>
#include <optional>

#include "lines/near/approach.hpp"
#include "lines/near/stretch.hpp"

namespace linewright {

/// Says whether two places, one on each line, are to be compared.
using CountsPair = std::function<bool(double first_distance_in, double second_distance_in)>;

/// True where boxes tell that two lines stay farther apart than `horizon_in` beyond the reach.
bool are_far_apart(const Stretch& first, const Stretch& second, Reach reach, double horizon_in);

/// Least margin between two lines, or nothing where they stay farther apart than `horizon_in`
/// beyond the reach.
std::optional<Approach> nearest_lines(const Stretch& first, const Stretch& second, Reach reach,
                                      double horizon_in, const CountsPair& counts);

}  // namespace linewright
