#pragma once
// A leak test as a picture: what the gauge may do, and what it did.

#include <string>

#include "render/leak_test_report.hpp"

namespace linewright {

/// SVG: the gauge over time, falling as fast as the limit allows; where a log was judged its
/// readings, the worst minute with the limit from its start, and the leak fitted to them.
std::string leak_chart(const LeakTestReport& report);

}  // namespace linewright
