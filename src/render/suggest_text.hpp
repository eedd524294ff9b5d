#pragma once

#include <string>

#include "render/report.hpp"
#include "render/suggest_report.hpp"

namespace linewright {

/// Where supports could go, route by route, each with its reason, and the points to paste.
std::string suggest_text(const SuggestReport& report, const TextStyle& style);

/// The points to paste alone; empty where no route has supports to suggest. Lengths are in the unit
/// of each route's file; as they stand on a tape where the unit asked for is a fraction.
std::string suggest_yaml(const SuggestReport& report, LengthUnit unit);

/// What is to be done with `built` when the points of measured routes are pasted; empty where
/// nothing was measured.
std::string words_on_measures(const SuggestReport& report);

}  // namespace linewright
