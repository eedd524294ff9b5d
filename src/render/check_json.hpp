#pragma once

#include <string>

#include "render/report.hpp"

namespace linewright {

/// Every judgement of a report, passes too, with the routes they are about.
std::string check_json(const Report& report);

/// One of many projects, on one line: {"project_file", "exit", "check"}, of which the last is what
/// `check_json` has.
std::string check_json_line(const std::string& project_file, int exit, const Report& report);
/// The same of a project that could not be judged: {"project_file", "exit", "errors"}.
std::string refused_json_line(const std::string& project_file, int exit, const std::string& errors);

}  // namespace linewright
