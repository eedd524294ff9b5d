#pragma once

#include <string>

#include "render/report.hpp"

namespace linewright {

/// Every judgement of a report, passes too, with the routes they are about.
std::string check_json(const Report& report);

}  // namespace linewright
