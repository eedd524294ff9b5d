#pragma once

#include <string>

#include "render/suggest_report.hpp"

namespace linewright {

/// Where supports could go, as JSON.
std::string suggest_json(const SuggestReport& report);

}  // namespace linewright
