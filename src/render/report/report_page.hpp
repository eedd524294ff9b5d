#pragma once
// A report as one page of HTML that needs nothing but itself: it sends no request, its policy lets
// no script run but its own, and it can be read and printed without any.

#include <optional>
#include <string>
#include <vector>

#include "planning/close_up.hpp"
#include "planning/leak_test_plan.hpp"
#include "planning/parts.hpp"
#include "planning/rig.hpp"
#include "planning/scene.hpp"
#include "planning/schedule.hpp"
#include "render/report.hpp"

namespace linewright {

/// A leak test as it would be done on the day that the page names, or why there can be none.
struct PlannedLeakTest {
  std::string system;
  std::optional<LeakTestPlan> plan;
  std::string refusal;
};

struct ReportPage {
  Report report;
  Rig rig;  ///< with its least gaps
  std::vector<PlannedLeakTest> leak_tests;
  Schedule by_part;
  Schedule by_frame;
  PartsList parts;
  std::optional<CloseUp> close_up;  ///< absent where the project has no closures
  Scene scene;
  Phrasing phrasing;
  std::string written;   ///< date and time, as shown
  bool watched = false;  ///< written again on each save: the page offers to load itself again
};

std::string report_page(const ReportPage& page);

/// The page in place of a report while the project's files have errors: `errors` as `check` prints
/// them.
std::string refused_page(const std::string& errors, const std::string& written);

}  // namespace linewright
