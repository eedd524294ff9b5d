#pragma once

#include <string>

#include "render/report.hpp"

namespace linewright {

/// Findings for a person at a bench: route by route, worst first, each with its place, margin,
/// source and mend; then a tally of every route, the summary and what was assumed.
std::string check_text(const Report& report, const TextStyle& style);

}  // namespace linewright
