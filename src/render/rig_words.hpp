#pragma once
// Sentences of a cable's rig that more than one form says.

#include <string>

#include "planning/rig.hpp"
#include "words/phrasing.hpp"

namespace linewright {

/// What the turnbuckles can take up; empty for a cable without any, or without their adjustment.
std::string take_up_words(const CableCut& cut, const Phrasing& phrasing);

}  // namespace linewright
