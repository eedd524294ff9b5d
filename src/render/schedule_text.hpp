#pragma once
// The schedule as lists to work from.

#include <string>

#include "planning/schedule.hpp"
#include "render/report.hpp"

namespace linewright {

std::string schedule_text(const Schedule& schedule, const TextStyle& style);

}  // namespace linewright
