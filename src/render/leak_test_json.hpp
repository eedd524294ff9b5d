#pragma once

#include <string>

#include "render/leak_test_report.hpp"

namespace linewright {

/// The plan, and the verdict where there is one, as JSON. Keys of readings end in the unit of the
/// test: "_ft" for a static system, "_kt" for a pitot system.
std::string leak_test_json(const LeakTestReport& report);

}  // namespace linewright
