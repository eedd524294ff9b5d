#pragma once
// What to buy as a list.

#include <string>

#include "planning/parts.hpp"
#include "render/report.hpp"

namespace linewright {

std::string parts_text(const PartsList& list, const TextStyle& style);

}  // namespace linewright
