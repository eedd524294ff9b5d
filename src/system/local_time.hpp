#pragma once

#include <ctime>
#include <optional>

namespace linewright {

/// `time` by the clock and the calendar on the wall; nothing where the system cannot tell.
std::optional<std::tm> local_time(std::time_t time);

}  // namespace linewright
