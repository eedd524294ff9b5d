#pragma once

#include <string>
#include <vector>

#include "planning/leak_test_plan.hpp"

namespace linewright {

/// What can hurt the instruments or the result, a sentence or two each, the worst first. The plan's
/// figures must be worked out.
std::vector<std::string> leak_cautions(const LeakTestPlan& plan);

/// What the plan leaves out or takes for granted, a sentence or two each.
std::vector<std::string> leak_notes(const LeakTestPlan& plan);

}  // namespace linewright
