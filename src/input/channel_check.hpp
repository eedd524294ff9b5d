#pragma once
// Whether a section can be carried along a path.

#include <optional>

#include "input/outline_check.hpp"
#include "model/structure.hpp"

namespace linewright {

/// The first leg of the channel's path on which its section would fold over itself; the fault's
/// corner is the leg's end among the path's points. Nothing where a number is NaN. Precondition: no
/// two neighbours of the path, nor of the section, are at one place.
std::optional<OutlineFault> fold_fault(const Channel& channel);

}  // namespace linewright
