#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "commands/outcome.hpp"
#include "input/diagnostic.hpp"
#include "lines/prepared.hpp"
#include "model/expected.hpp"
#include "model/set_value.hpp"
#include "render/report.hpp"

namespace linewright {

struct OpenedProject {
  /// The project, or a refusal that shows everything that is wrong with its files.
  Expected<Project, Outcome> project;
  std::vector<std::filesystem::path> files;  ///< as in LoadResult
  std::vector<SetValue> set;                 ///< for this run, in place of what the files say
};

/// Reads a project, and says which files it consists of. `set`: "PATH=VALUE" each, in place of what
/// the files say.
OpenedProject open_with_files(const std::filesystem::path& path,
                              const std::vector<std::string>& set = {});

/// The project, or a refusal that shows everything that is wrong with its files.
Expected<Project, Outcome> open_project(const std::filesystem::path& path);

/// The refusal of the project at `path`, for these errors in its files.
Outcome refused(const std::vector<Diagnostic>& errors, const std::filesystem::path& path);

/// The project's name, routes, systems and assumptions; no judgements yet.
Report describe(const PreparedProject& prepared);

}  // namespace linewright
