#pragma once
// How far two lines may lie off between them: less where both are as built.

#include <vector>

#include "lines/near/nearest_lines.hpp"

namespace linewright {

/// Places of two lines for which one tolerance holds: what both may lie off together.
struct TolerancePart {
  double tolerance_in = 0;
  CountsPair counts;
};

/// Parts that cover two lines: one where nothing of them was measured. What is nearest in each is
/// judged by itself, for a gap that is wider by less than the tolerances differ may be the worse.
std::vector<TolerancePart> tolerance_parts(const PreparedProject& prepared,
                                           const PreparedRoute& first, const PreparedRoute& second);

/// The most that one of them is between any two lines.
double most_pair_tolerance_in(const PreparedProject& prepared);

}  // namespace linewright
