#pragma once

#include <string>

#include "render/report.hpp"

namespace linewright {

/// Lengths and bend schedule of every route for the bench, then the systems.
std::string cutlist_text(const Report& report, const TextStyle& style);

}  // namespace linewright
