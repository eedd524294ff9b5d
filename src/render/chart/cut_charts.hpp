#pragma once
// Every tube as it is cut and bent, in order.

#include <string>

#include "render/report.hpp"

namespace linewright {

/// SVG: each line straight, at one scale, with its bends where they are marked on it, their order,
/// angle and turn; beside them what is cut and trimmed. Soft lines have their bends where the style
/// is verbose.
std::string cut_charts(const Report& report, const TextStyle& style);

}  // namespace linewright
