#pragma once
// Line to buy, and sleeves: the pieces that are cut, and the lengths that they are cut from.

#include <string>
#include <vector>

#include "lines/prepared.hpp"
#include "planning/parts_tally.hpp"

namespace linewright {

/// Adds the line of every route, and its sleeves; says in `notes` how they are cut, and what is not
/// known.
void add_line_parts(const PreparedProject& prepared, PartsTally& tally,
                    std::vector<std::string>& notes);

}  // namespace linewright
