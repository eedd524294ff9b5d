#pragma once

#include <string>

#include "render/comparison.hpp"

namespace linewright {

/// What is compared, the findings that differ, the two tallies, and the routes and systems whose
/// line, length, volume or mass differ.
std::string compare_text(const Comparison& comparison, const TextStyle& style);

}  // namespace linewright
