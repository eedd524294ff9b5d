#pragma once
// The files of a project: the project file, then what each includes, depth first.

#include <filesystem>
#include <vector>

#include "input/parsed_file.hpp"
#include "input/project_draft.hpp"
#include "input/yaml_document.hpp"

namespace linewright {

inline constexpr std::size_t most_project_files = 256;
/// All files of a project together.
inline constexpr std::size_t most_project_bytes = largest_file_bytes;

/// Reads the project file at `path` (or `project.yaml` in that folder) and what it includes, each
/// once, as trees, a file before what it includes. An include that is missing, outside the
/// project's folder, in a ring or doubled is an error at the place that names it.
std::vector<ParsedFile> read_project_files(const std::filesystem::path& path, ProjectDraft& draft);

}  // namespace linewright
