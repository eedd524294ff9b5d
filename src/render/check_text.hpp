#pragma once

#include <string>

#include "render/report.hpp"

namespace linewright {

/// Findings for a person at a bench, each with its place, margin, source and mend: gravest first,
/// those of one cause and one mend folded, then what was assumed, and last a tally of every route
/// and the summary. By route, where the style asks for it, with the tally before what was assumed.
std::string check_text(const Report& report, const TextStyle& style);

}  // namespace linewright
