#pragma once
// Paths written in project files: they may lead only to files inside the project's folder.

#include <filesystem>
#include <string>

#include "model/expected.hpp"

namespace linewright {

/// A file inside the project's folder.
struct ProjectPath {
  std::filesystem::path path;  ///< canonical, as far as it exists
  std::string shown;           ///< relative to the project's folder, with forward slashes
};

/// `written`, taken from the folder `base`, as a path inside `project_folder` (both canonical), or
/// why not: it is absolute, or leads outside, by itself or through a symbolic link. Says nothing on
/// whether the file exists.
Expected<ProjectPath, std::string> resolve_project_path(const std::filesystem::path& project_folder,
                                                        const std::filesystem::path& base,
                                                        const std::string& written);

}  // namespace linewright
