#pragma once

#include <string>
#include <vector>

#include "planning/walk_round.hpp"
#include "words/phrasing.hpp"

namespace linewright {

/// One row an item, with empty columns for what was measured, the day and who measured:
/// route, distance, fs, bl, wl, kind, rule, what, drawn, limit, sense, unit, verdict, measured, on,
/// by. Lengths, also drawn and limit, are in `unit`.
std::string walk_round_csv(const std::vector<WalkSheet>& sheets, LengthUnit unit);

}  // namespace linewright
