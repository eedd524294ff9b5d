#pragma once

#include <string>

#include "render/leak_test_report.hpp"
#include "render/report.hpp"

namespace linewright {

/// The plan for the hangar: cautions first, then figures, set-up, readings and the search.
std::string leak_plan_text(const LeakTestReport& report, const TextStyle& style);

/// The verdict, why, and the figures behind it. Precondition: the report has a judged log.
std::string leak_verdict_text(const LeakTestReport& report, const TextStyle& style);

/// A test record for the builder's log, dated, with every reading and lines to fill in by hand.
/// Precondition: the report has a judged log.
std::string leak_record_text(const LeakTestReport& report, const std::string& date);

}  // namespace linewright
