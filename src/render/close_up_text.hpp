#pragma once
// What comes before each closure, as a list to tick off.

#include <string>

#include "planning/close_up.hpp"
#include "render/report.hpp"

namespace linewright {

std::string close_up_text(const CloseUp& plan, const TextStyle& style);

}  // namespace linewright
