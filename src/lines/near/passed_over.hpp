#pragma once
// Lists what rules on gaps leave out near fittings.

#include <vector>

#include "lines/prepared.hpp"
#include "model/passed_over.hpp"

namespace linewright {

/// Farther than this it is not listed, for no limit would ask more of it at a support.
inline constexpr double passed_over_listed_in = 0.25;

/// By route, in file order: structure near its `from` and its `to`, then lines after it that end at
/// a node of its own. What is named `only_route` alone, where that is not empty.
std::vector<PassedOver> passed_over_near_fittings(const PreparedProject& prepared,
                                                  const std::string& only_route = {});

}  // namespace linewright
