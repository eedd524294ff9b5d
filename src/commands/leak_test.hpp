#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "commands/commands.hpp"
#include "planning/leak_test_plan.hpp"

namespace linewright {

/// A record for the builder's log.
struct RecordOptions {
  std::filesystem::path file;  ///< must not be there yet
  std::string date;            ///< YYYY-MM-DD
};

struct LeakTestOptions {
  std::filesystem::path project;
  std::string system;  ///< its name, or its kind where it is the only one
  LeakTestSetup setup;
  std::optional<std::string> at;  ///< node with the test set; absent: as for the whole
  std::vector<std::string> caps;  ///< nodes where lines are capped
  std::optional<std::filesystem::path> readings;  ///< judge this log; else plan only
  std::optional<RecordOptions> record;            ///< only with readings
  ResultForm form;
};

/// Plans a leak test of a system, or judges the readings of one. A log that does not pass is a
/// failure, also where the answer is unknown.
Outcome leak_test(const LeakTestOptions& options);

}  // namespace linewright
