#pragma once
// A project with some of its values as they would be.

#include <filesystem>
#include <string>
#include <vector>

#include "input/load_project.hpp"
#include "input/parsed_file.hpp"
#include "model/set_value.hpp"

namespace linewright {

struct LoadedAsIf {
  LoadResult loaded;
  std::vector<SetValue> set;      ///< in the order given
  std::vector<ParsedFile> files;  ///< their trees with all that was worked out
};

/// Errors that are found in a project once it is read: each gets the line that it is in, and they
/// are put in the order of the files.
void show_in_files(std::vector<Diagnostic>& errors, const std::vector<ParsedFile>& files);

/// As `load_project`, with each "PATH=VALUE" of `set` in place of what the files say, as
/// `input/set_values` has it. What is wrong with them is among the errors, at a place in `--set`.
LoadedAsIf load_as_if(const std::filesystem::path& path, const Catalogue& built_in,
                      const std::vector<std::string>& set);

}  // namespace linewright
