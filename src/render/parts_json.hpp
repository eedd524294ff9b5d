#pragma once
// What to buy as JSON, sizes in inches.

#include <string>

#include "planning/parts.hpp"

namespace linewright {

std::string parts_json(const PartsList& list);

}  // namespace linewright
