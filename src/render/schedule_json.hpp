#pragma once
// The schedule as JSON, in inches.

#include <string>

#include "planning/schedule.hpp"

namespace linewright {

std::string schedule_json(const Schedule& schedule);

}  // namespace linewright
