#pragma once

#include <ctime>
#include <string>

namespace linewright {

/// "14:03:12", by the clock on the wall.
std::string time_of_day(std::time_t time);

/// "2026-03-14", by the calendar on the wall.
std::string date_of(std::time_t time);

}  // namespace linewright
