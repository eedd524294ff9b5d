#include "catalogue/catalogue.hpp"
#include "commands/commands.hpp"
#include "commands/open_project.hpp"
#include "input/load_project.hpp"

namespace linewright {

Outcome expand(const std::filesystem::path& project) {
  if (project.empty()) return refusal("the path of the project is empty");
  const auto text = expand_project(project, built_in_catalogue());
  if (!text) return refused(text.error(), project);
  return {ExitCode::nothing_failed, *text, ""};
}

}  // namespace linewright
