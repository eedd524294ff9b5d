#include "input/project_paths.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <system_error>

#include "input/project_draft.hpp"
#include "system/path_text.hpp"
#include "system/true_path.hpp"

namespace linewright {

namespace fs = std::filesystem;

Expected<ProjectPath, std::string> resolve_project_path(const fs::path& project_folder,
                                                        const fs::path& base,
                                                        const std::string& written) {
  if (path_of(written).has_root_path())
    return fmt::format("{} is an absolute path: paths must be relative", quoted_text(written));
  std::error_code failure;
  const fs::path resolved = true_path(base / path_of(written), failure);
  if (failure)
    return fmt::format("{} cannot be followed: {}", quoted_text(written), failure.message());
  const auto [end_of_folder, rest] =
      std::mismatch(project_folder.begin(), project_folder.end(), resolved.begin(), resolved.end());
  if (end_of_folder != project_folder.end())
    return fmt::format("{} is outside the project's folder", quoted_text(written));
  fs::path shown;
  for (auto part = rest; part != resolved.end(); ++part) shown /= *part;
  return ProjectPath{resolved, text_of(shown)};
}

}  // namespace linewright
