#pragma once
// What comes before each closure, as JSON.

#include <string>

#include "planning/close_up.hpp"

namespace linewright {

std::string close_up_json(const CloseUp& plan);

}  // namespace linewright
