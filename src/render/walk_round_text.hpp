#pragma once

#include <string>
#include <vector>

#include "planning/walk_round.hpp"
#include "render/report.hpp"

namespace linewright {

/// Sheets to print and write on: a blank for every measure, a box for what is only looked at.
std::string walk_round_text(const std::string& project_name, const std::vector<WalkSheet>& sheets,
                            const TextStyle& style);

}  // namespace linewright
