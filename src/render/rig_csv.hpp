#pragma once

#include <string>

#include "planning/rig.hpp"
#include "rules/phrasing.hpp"

namespace linewright {

/// The rig as rows of three kinds, told apart by the first column: `cable`, then its `tension`
/// rows, one a temperature, then its `span` rows. Columns of the other kinds are empty, and so is
/// what is not known; `missing` of a cable row names it. Lengths in inches, or in millimetres where
/// they are asked for.
std::string rig_csv(const Rig& rig, LengthUnit unit);

}  // namespace linewright
