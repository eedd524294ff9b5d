#pragma once

#include <string>

#include "render/report.hpp"

namespace linewright {

/// The cut list of a report as JSON, in inches.
std::string cutlist_json(const Report& report);

}  // namespace linewright
