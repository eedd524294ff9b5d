#pragma once
// A project's YAML files into the model. All errors that can be found are found in one run.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "input/diagnostic.hpp"
#include "model/expected.hpp"
#include "model/project.hpp"

namespace linewright {

struct LoadResult {
  std::optional<Project> project;  ///< set only when there are no errors
  std::vector<Diagnostic> errors;  ///< in file and line order
  /// The files that the project consists of, as far as it could be read, absolute; the project file
  /// first. Those that are missing are among them, and what links lead to.
  std::vector<std::filesystem::path> files;
};

/// Reads a project file, or `project.yaml` in a folder, and all that it includes. `built_in` is
/// the catalogue to which the project's own lines are added. Never throws for bad input.
LoadResult load_project(const std::filesystem::path& path, const Catalogue& built_in);

/// The project at `path` as the text of one file in which everything that follows from what is
/// there is written down, with a comment on what it came from. It loads, and gives the same
/// verdicts. Or what is wrong with the files.
Expected<std::string, std::vector<Diagnostic>> expand_project(const std::filesystem::path& path,
                                                              const Catalogue& built_in);

}  // namespace linewright
