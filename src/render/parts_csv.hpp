#pragma once
// What to buy as CSV, a row for each item and size.

#include <string>

#include "planning/parts.hpp"

namespace linewright {

std::string parts_csv(const PartsList& list, LengthUnit unit);

}  // namespace linewright
