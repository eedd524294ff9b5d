#pragma once
// The schedule as CSV: a row for each support, then one for each hole.

#include <string>

#include "planning/schedule.hpp"
#include "words/phrasing.hpp"

namespace linewright {

std::string schedule_csv(const Schedule& schedule, LengthUnit unit);

}  // namespace linewright
