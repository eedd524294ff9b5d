#pragma once
// The files of a project: the project file, then what each includes, depth first.

#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include "input/project_draft.hpp"
#include "input/yaml_document.hpp"

namespace linewright {

inline constexpr std::size_t most_project_files = 256;
/// All files of a project together.
inline constexpr std::size_t most_project_bytes = largest_file_bytes;

/// A file that was read, for the order of errors and the lines they show.
struct ReadFile {
  std::string name;  ///< relative to the project's folder
  std::vector<std::string> lines;
};

/// Called with each file's root; `included` is false for the project file.
using FileVisitor = std::function<void(const YamlNode& root, ReadContext& context, bool included)>;

/// Reads the project file at `path` (or `project.yaml` in that folder) and what it includes, each
/// once, and hands each to `visit` before the next is read. An include that is missing, outside
/// the project's folder, in a ring or doubled is an error at the place that names it.
std::vector<ReadFile> read_project_files(const std::filesystem::path& path, ProjectDraft& draft,
                                         const FileVisitor& visit);

}  // namespace linewright
