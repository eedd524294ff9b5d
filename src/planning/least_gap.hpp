#pragma once
// How near a route comes to anything through its travel: the nearest of what the rules judged.

#include <optional>
#include <string>
#include <vector>

#include "model/judgement.hpp"

namespace linewright {

/// The judgement with the least margin of one rule on one route.
struct LeastGap {
  std::string rule;
  std::string with;                   ///< the other thing; empty for none
  std::optional<double> gap_in;       ///< between surfaces, build tolerance taken off
  std::optional<double> limit_in;     ///< `chafe`: how far the line can move there
  std::optional<double> distance_in;  ///< along the route, where the judgement is on it
  Verdict verdict = Verdict::unknown;
  std::string message;
};

/// Rules that judge gaps of a line through its travel.
inline constexpr std::string_view gap_rules[] = {"clearance", "chafe", "separation"};

/// One a rule that said something of the route, in the order of `gap_rules`: the one without a
/// figure where something could not be judged, else that of least margin.
std::vector<LeastGap> least_gaps(const std::vector<Judgement>& judgements,
                                 const std::string& route);

}  // namespace linewright
