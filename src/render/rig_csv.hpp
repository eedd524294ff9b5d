#pragma once

#include <string>

#include "planning/rig.hpp"
#include "words/phrasing.hpp"

namespace linewright {

/// The rig as rows of five kinds, told apart by the first column: `cable`, then the `piece` rows to
/// cut it from, its `tension` rows, one a temperature, its `span` rows, and its `gap` rows, one a
/// rule. Columns of the other kinds are empty, and so is what is not known; `missing` of a cable
/// row names it. Lengths in inches, or in millimetres where they are asked for.
std::string rig_csv(const Rig& rig, LengthUnit unit);

}  // namespace linewright
