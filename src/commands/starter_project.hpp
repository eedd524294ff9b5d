#pragma once

#include <string_view>
#include <vector>

namespace linewright {

struct StarterFile {
  std::string_view name;
  std::string_view text;
};

/// The files of a small invented project that checks clean, commented as a tutorial.
const std::vector<StarterFile>& starter_project();

}  // namespace linewright
