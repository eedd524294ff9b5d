#pragma once
// What is told about a leak test, whatever the format.

#include <optional>
#include <string>
#include <vector>

#include "model/leak_log.hpp"
#include "planning/leak_judge.hpp"
#include "planning/leak_test_plan.hpp"

namespace linewright {

/// A log and what came of it.
struct JudgedLog {
  std::string file;  ///< as the user wrote it
  LeakLog log;
  LeakVerdict verdict;
};

struct LeakTestReport {
  std::string project_name;
  std::vector<std::string> assumptions;
  LeakTestPlan plan;
  std::optional<JudgedLog> judged;
};

}  // namespace linewright
