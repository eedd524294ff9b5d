#pragma once
// What to buy as JSON, sizes in inches.

#include <string>

#include "planning/parts.hpp"
#include "render/json_values.hpp"

namespace linewright {

/// One of "parts".
Json part_row_json(const PartRow& row);

std::string parts_json(const PartsList& list);

}  // namespace linewright
