#pragma once
// A project with some of its values as they would be.

#include <filesystem>
#include <string>
#include <vector>

#include "input/load_project.hpp"
#include "model/set_value.hpp"

namespace linewright {

struct LoadedAsIf {
  LoadResult loaded;
  std::vector<SetValue> set;  ///< in the order given
};

/// As `load_project`, with each "PATH=VALUE" of `set` in place of what the files say, as
/// `input/set_values` has it. What is wrong with them is among the errors, at a place in `--set`.
LoadedAsIf load_as_if(const std::filesystem::path& path, const Catalogue& built_in,
                      const std::vector<std::string>& set);

}  // namespace linewright
