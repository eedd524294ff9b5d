#include <fmt/format.h>

#include "commands/commands.hpp"
#include "commands/starter_project.hpp"
#include "render/layout.hpp"
#include "render/project_schema.hpp"
#include "system/path_text.hpp"
#include "system/whole_file.hpp"

namespace linewright {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view schema_file = "linewright.schema.json";
/// Editors that check YAML by a schema look for it in such a comment.
constexpr std::string_view line_for_editors =
    "\n# yaml-language-server: $schema=linewright.schema.json\n";

std::vector<NewFile> new_files(const fs::path& directory) {
  std::vector<NewFile> files;
  for (const StarterFile& file : starter_project())
    files.push_back(
        {directory / path_of(file.name), std::string(file.text).append(line_for_editors)});
  files.push_back({directory / path_of(schema_file), project_schema()});
  return files;
}

/// Folders on the way to `directory` that are not there yet, deepest first.
std::vector<fs::path> missing_folders(const fs::path& directory) {
  std::vector<fs::path> missing;
  std::error_code ignored;
  for (fs::path folder = directory; !folder.empty() && !fs::exists(folder, ignored);
       folder = folder.parent_path())
    missing.push_back(folder);
  return missing;
}

}  // namespace

Outcome init(const fs::path& directory, bool quiet) {
  if (directory.empty()) return refusal("the folder to write to has an empty name");
  const std::vector<fs::path> made = missing_folders(directory);
  std::error_code error;
  fs::create_directories(directory, error);
  const bool is_folder = !error && fs::is_directory(directory, error);
  const std::vector<NewFile> files = new_files(directory);
  std::string wrong;
  if (!is_folder) {
    wrong = fmt::format("'{}' cannot be made a folder: {}", text_of(directory),
                        error ? error.message() : "it is a file");
  } else {
    wrong = write_all_or_none(files);
  }
  if (!wrong.empty()) {
    for (const fs::path& folder : made) fs::remove(folder, error);
    return refusal(one_line(wrong));
  }
  Outcome outcome;
  if (quiet) return outcome;
  for (const NewFile& file : files) outcome.result += fmt::format("wrote {}\n", text_of(file.path));
  outcome.result += fmt::format("Now: linewright check {}\n", text_of(directory));
  return outcome;
}

}  // namespace linewright
